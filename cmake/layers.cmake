# kw_<folder>: one static library per line of src/layers.txt, linked by that line.
set(KW_LAYERS_FILE ${CMAKE_SOURCE_DIR}/src/layers.txt)
set_property(DIRECTORY APPEND PROPERTY CMAKE_CONFIGURE_DEPENDS ${KW_LAYERS_FILE})

function(kw_library folder inner outer)
  list(TRANSFORM inner PREPEND kw_)
  list(TRANSFORM outer PREPEND kw_3p_)
  file(GLOB sources CONFIGURE_DEPENDS ${CMAKE_SOURCE_DIR}/src/${folder}/*.cpp)
  add_library(kw_${folder} STATIC ${sources})
  target_include_directories(kw_${folder} PUBLIC ${CMAKE_SOURCE_DIR}/src)
  target_link_libraries(kw_${folder} PUBLIC ${inner} ${outer} PRIVATE kw_flags)
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
foreach(folder window command)  # the two that look for the demo job, fonts and schemas, and say the version
  target_compile_definitions(kw_${folder} PRIVATE KW_VERSION="${PROJECT_VERSION}" KW_ASSET_DIR="${KW_BUILT_ASSETS}")
endforeach()
