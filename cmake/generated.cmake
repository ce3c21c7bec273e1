# kw_shaders: #include "window/shaders_embedded.h" gives one constant per file of shaders/, named after it:
#   shaders/section.frag  ->  inline constexpr std::string_view kw::shaders::section_frag
# The text is the file's, byte for byte: the program puts the #version line before it.
file(GLOB shader_files CONFIGURE_DEPENDS ${CMAKE_SOURCE_DIR}/shaders/*.vert ${CMAKE_SOURCE_DIR}/shaders/*.frag ${CMAKE_SOURCE_DIR}/shaders/*.glsl)
set(shader_header ${CMAKE_BINARY_DIR}/generated/window/shaders_embedded.h)
add_custom_command(
  OUTPUT ${shader_header}
  COMMAND ${CMAKE_COMMAND} "-DFILES=${shader_files}" -DOUT=${shader_header} -P ${CMAKE_SOURCE_DIR}/cmake/embed_shaders.cmake
  DEPENDS ${shader_files} ${CMAKE_SOURCE_DIR}/cmake/embed_shaders.cmake
  VERBATIM)
add_custom_target(kw_shaders_header DEPENDS ${shader_header})
add_library(kw_shaders INTERFACE)
add_dependencies(kw_shaders kw_shaders_header)
target_include_directories(kw_shaders INTERFACE ${CMAKE_BINARY_DIR}/generated)

# kw_assets: build/<preset>/assets holds everything from assets/ and, under fonts/, the fonts that we do not carry ourselves.
set(KW_BUILT_ASSETS ${CMAKE_BINARY_DIR}/assets)
find_path(INTER_DIR Inter-Regular.otf PATHS /usr/share/fonts/opentype/inter /usr/share/fonts/inter REQUIRED)
set(fonts ${INTER_DIR}/Inter-Regular.otf ${INTER_DIR}/Inter-SemiBold.otf)
file(GLOB_RECURSE asset_files CONFIGURE_DEPENDS RELATIVE ${CMAKE_SOURCE_DIR}/assets ${CMAKE_SOURCE_DIR}/assets/*)

function(kw_copy from to)
  add_custom_command(OUTPUT ${to} COMMAND ${CMAKE_COMMAND} -E copy ${from} ${to} DEPENDS ${from} VERBATIM)
  set(copied ${copied} ${to} PARENT_SCOPE)
endfunction()
foreach(font IN LISTS fonts)
  get_filename_component(name ${font} NAME)
  kw_copy(${font} ${KW_BUILT_ASSETS}/fonts/${name})
endforeach()
foreach(asset IN LISTS asset_files)
  kw_copy(${CMAKE_SOURCE_DIR}/assets/${asset} ${KW_BUILT_ASSETS}/${asset})
endforeach()
add_custom_target(kw_assets ALL DEPENDS ${copied})

# kw_tables: #include "words/tables_embedded.h" gives src/words/<language>.txt as kw::tables::<language>.
file(GLOB word_files CONFIGURE_DEPENDS ${CMAKE_SOURCE_DIR}/src/words/*.txt)
set(word_header ${CMAKE_BINARY_DIR}/generated/words/tables_embedded.h)
add_custom_command(
  OUTPUT ${word_header}
  COMMAND ${CMAKE_COMMAND} "-DFILES=${word_files}" -DOUT=${word_header} -P ${CMAKE_SOURCE_DIR}/cmake/embed_words.cmake
  DEPENDS ${word_files} ${CMAKE_SOURCE_DIR}/cmake/embed_words.cmake
  VERBATIM)
add_custom_target(kw_words_header DEPENDS ${word_header})
