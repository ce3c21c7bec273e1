# kw_3p_<name>: one target for each library named in src/layers.txt. Versions, licences and origins: third_party/README.md.
# All of them are SYSTEM includes, so that our warnings stop at our own code.
find_package(PkgConfig REQUIRED)
find_package(nlohmann_json 3.11 REQUIRED CONFIG)
find_package(CLI11 2.1 REQUIRED CONFIG)
find_package(glfw3 3.3 REQUIRED CONFIG)
find_package(Threads REQUIRED)
find_path(ALSA_INCLUDE alsa/asoundlib.h REQUIRED)
pkg_check_modules(polyclipping REQUIRED IMPORTED_TARGET polyclipping)
find_path(EXPECTED_INCLUDE tl/expected.hpp REQUIRED)
pkg_check_modules(CAIRO REQUIRED cairo-pdf cairo-ft)
find_path(STB_INCLUDE stb_image_write.h PATH_SUFFIXES stb REQUIRED)

foreach(name expected clipper json cli11 glfw stb alsa cairo posix)
  add_library(kw_3p_${name} INTERFACE)
endforeach()
target_include_directories(kw_3p_expected SYSTEM INTERFACE ${EXPECTED_INCLUDE})
target_include_directories(kw_3p_alsa SYSTEM INTERFACE ${ALSA_INCLUDE})
target_link_libraries(kw_3p_alsa INTERFACE ${CMAKE_DL_LIBS})  # the library is loaded when it is first wanted
target_include_directories(kw_3p_cairo SYSTEM INTERFACE ${CAIRO_INCLUDE_DIRS})
target_link_libraries(kw_3p_cairo INTERFACE ${CMAKE_DL_LIBS})  # likewise, when the first page is written
target_include_directories(kw_3p_stb SYSTEM INTERFACE ${STB_INCLUDE})
target_link_libraries(kw_3p_clipper INTERFACE PkgConfig::polyclipping)
target_link_libraries(kw_3p_json INTERFACE nlohmann_json::nlohmann_json)
target_link_libraries(kw_3p_cli11 INTERFACE CLI11::CLI11)
target_link_libraries(kw_3p_glfw INTERFACE glfw Threads::Threads)
target_compile_definitions(kw_3p_glfw INTERFACE GLFW_INCLUDE_NONE)  # GL comes from glad

# glad writes the loader for just the GL that we use. --reproducible takes the registry that it brought along, not the network's.
# Debian's own glad first: another python in PATH does not have its module.
find_program(GLAD glad PATHS /usr/bin NO_DEFAULT_PATH)
find_program(GLAD glad REQUIRED)
set(glad_dir ${CMAKE_BINARY_DIR}/glad)
add_custom_command(
  OUTPUT ${glad_dir}/src/gl.c ${glad_dir}/include/glad/gl.h ${glad_dir}/include/KHR/khrplatform.h
  COMMAND ${GLAD} --quiet --reproducible --api gl:core=3.3 --extensions= --out-path ${glad_dir} c
  VERBATIM)
add_library(kw_3p_glad STATIC ${glad_dir}/src/gl.c ${glad_dir}/include/glad/gl.h)
file(MAKE_DIRECTORY ${glad_dir}/include)
target_include_directories(kw_3p_glad SYSTEM PUBLIC ${glad_dir}/include)
target_compile_options(kw_3p_glad PRIVATE -ffunction-sections -fdata-sections)

# Dear ImGui, from source: unpacked by third_party/fetch-imgui.sh, or the same version from upstream.
set(IMGUI_DIR ${CMAKE_SOURCE_DIR}/build/third_party/imgui CACHE PATH "Dear ImGui 1.90.1 source tree")
if(NOT EXISTS ${IMGUI_DIR}/imgui.h)
  include(FetchContent)
  FetchContent_Declare(imgui GIT_REPOSITORY https://github.com/ocornut/imgui.git GIT_TAG v1.90.1 GIT_SHALLOW ON)
  FetchContent_MakeAvailable(imgui)
  set(IMGUI_DIR ${imgui_SOURCE_DIR})
endif()
foreach(pin imgui.h=68f05c921ad9a657b3ef5d1be7516a425cbd9a77b9b632faf9fd9c7ca1fa166d
            imgui.cpp=d71b34cc92c9202a6bc26af61a87a16ea551b0b00788acf99fa26300ef116f72)
  string(REGEX MATCH "(.*)=(.*)" _ ${pin})
  file(SHA256 ${IMGUI_DIR}/${CMAKE_MATCH_1} found)
  if(NOT found STREQUAL CMAKE_MATCH_2)
    message(FATAL_ERROR "${IMGUI_DIR}/${CMAKE_MATCH_1} is not that of Dear ImGui 1.90.1")
  endif()
endforeach()
add_library(kw_3p_imgui STATIC
  ${IMGUI_DIR}/imgui.cpp ${IMGUI_DIR}/imgui_draw.cpp ${IMGUI_DIR}/imgui_tables.cpp ${IMGUI_DIR}/imgui_widgets.cpp
  ${IMGUI_DIR}/misc/cpp/imgui_stdlib.cpp
  ${IMGUI_DIR}/backends/imgui_impl_glfw.cpp ${IMGUI_DIR}/backends/imgui_impl_opengl3.cpp)
target_include_directories(kw_3p_imgui SYSTEM PUBLIC ${IMGUI_DIR} ${IMGUI_DIR}/backends ${IMGUI_DIR}/misc/cpp)
target_compile_definitions(kw_3p_imgui PUBLIC IMGUI_DISABLE_OBSOLETE_FUNCTIONS PRIVATE IMGUI_IMPL_OPENGL_LOADER_CUSTOM)
set_target_properties(kw_3p_imgui PROPERTIES UNITY_BUILD OFF)
target_compile_options(kw_3p_imgui PRIVATE -w -O2 -ffunction-sections -fdata-sections)
# With a custom loader the back end includes no GL header: hand it glad's.
set_source_files_properties(${IMGUI_DIR}/backends/imgui_impl_opengl3.cpp PROPERTIES COMPILE_OPTIONS "-include;glad/gl.h")
target_link_libraries(kw_3p_imgui PUBLIC kw_3p_glfw kw_3p_glad)
