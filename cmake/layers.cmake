# kw_<folder>: one static library per line of src/layers.txt, linked by that line.
set(KW_LAYERS_FILE ${CMAKE_SOURCE_DIR}/src/layers.txt)
set_property(DIRECTORY APPEND PROPERTY CMAKE_CONFIGURE_DEPENDS ${KW_LAYERS_FILE})

# Under the sanitizers only what computes is optimised: what reads, writes and draws pages takes longer to optimise than its tests gain.
set(KW_AS_WRITTEN file session print window command)

function(kw_library folder inner outer)
  list(TRANSFORM inner PREPEND kw_)
  list(TRANSFORM outer PREPEND kw_3p_)
  file(GLOB sources CONFIGURE_DEPENDS ${CMAKE_SOURCE_DIR}/src/${folder}/*.cpp)
  add_library(kw_${folder} STATIC ${sources})
  target_include_directories(kw_${folder} PUBLIC ${CMAKE_SOURCE_DIR}/src)
  target_link_libraries(kw_${folder} PUBLIC ${inner} ${outer} PRIVATE kw_flags)
  if(KW_SANITIZE AND folder IN_LIST KW_AS_WRITTEN)
    target_compile_options(kw_${folder} PRIVATE -O0)
  endif()
endfunction()

file(STRINGS ${KW_LAYERS_FILE} lines REGEX "^[a-z]+:")
foreach(line IN LISTS lines)
  string(REGEX MATCH "^([a-z]+):([^|]*)\\|(.*)$" _ "${line}")
  set(folder ${CMAKE_MATCH_1})
  set(below "${CMAKE_MATCH_2}")
  set(outside "${CMAKE_MATCH_3}")  # kept: the next match forgets this one's parts
  string(REGEX MATCHALL "[a-z0-9]+" inner "${below}")
  string(REGEX MATCHALL "[a-z0-9]+" outer "${outside}")
  kw_library(${folder} "${inner}" "${outer}")
  list(APPEND KW_FOLDERS ${folder})
endforeach()

target_link_libraries(kw_window PUBLIC kw_shaders)
add_dependencies(kw_words kw_words_header)
target_include_directories(kw_words PRIVATE ${CMAKE_BINARY_DIR}/generated)
# The standard asks no compiler for literals as long as a table; all of ours take them.
set_source_files_properties(${CMAKE_SOURCE_DIR}/src/words/words.cpp PROPERTIES COMPILE_OPTIONS -Wno-overlength-strings)
# The one file that looks for the demo job, fonts and schemas.
set_source_files_properties(${CMAKE_SOURCE_DIR}/src/window/platform_native.cpp PROPERTIES
  COMPILE_DEFINITIONS "KW_ASSET_DIR=\"${KW_BUILT_ASSETS}\"")
