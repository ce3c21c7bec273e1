# test_<folder> from tests/<folder>/*.cpp, for every folder of src and for tests/whole. The tests' own outside sources come with
# them: Eigen, Boost, GLPK. doctest's main is compiled once.
find_package(doctest 2.4 REQUIRED CONFIG)
include(doctest)
find_package(Eigen3 3.4 REQUIRED NO_MODULE)
find_package(Boost 1.74 REQUIRED)
find_path(GLPK_INCLUDE glpk.h REQUIRED)
find_library(GLPK_LIBRARY glpk REQUIRED)

set(tests ${CMAKE_SOURCE_DIR}/tests)
file(CONFIGURE OUTPUT doctest_main.cpp CONTENT "#define DOCTEST_CONFIG_IMPLEMENT_WITH_MAIN\n#include <doctest/doctest.h>\n")
add_library(kw_test_main OBJECT ${CMAKE_CURRENT_BINARY_DIR}/doctest_main.cpp)
target_link_libraries(kw_test_main PUBLIC doctest::doctest)

# What every test may use: where the tests' files are, where the program is, and the outside sources.
add_library(kw_test_base INTERFACE)
target_link_libraries(kw_test_base INTERFACE doctest::doctest Eigen3::Eigen Boost::headers kw_3p_json)
target_include_directories(kw_test_base SYSTEM INTERFACE ${GLPK_INCLUDE})
target_compile_definitions(kw_test_base INTERFACE
  BOOST_ALLOW_DEPRECATED_HEADERS KW_TEST_DIR="${tests}" KW_PROGRAM="$<TARGET_FILE:kerfwright>" KW_ASSET_DIR="${KW_BUILT_ASSETS}")

# What is tested is optimised, the tests are less so: they are half of what is compiled.
if(KW_SANITIZE)
  add_compile_options($<$<COMPILE_LANGUAGE:CXX>:-O0>)
endif()

# A file that includes one of these is not sanitized: their templates take minutes to compile with sanitizers, and are not ours.
function(kw_spare_outside_templates)  # FILE...
  foreach(path IN LISTS ARGN)
    file(STRINGS ${path} outside REGEX "#include <(Eigen|boost)/")
    if(outside AND KW_SANITIZE)
      set_source_files_properties(${path} PROPERTIES COMPILE_OPTIONS -fno-sanitize=all)
    endif()
  endforeach()
endfunction()

function(kw_test folder libraries)  # further arguments: properties of its tests
  file(GLOB sources CONFIGURE_DEPENDS ${tests}/${folder}/*.cpp)
  if(NOT sources)
    return()
  endif()
  add_executable(test_${folder} ${sources} $<TARGET_OBJECTS:kw_test_main>)
  target_link_libraries(test_${folder} PRIVATE kw_flags ${libraries} kw_test_base)
  target_include_directories(test_${folder} PRIVATE ${tests})
  kw_spare_outside_templates(${sources})
  if(NOT KW_SANITIZE)
    target_compile_options(test_${folder} PRIVATE $<$<CONFIG:Release>:-O1>)
  endif()
  doctest_discover_tests(test_${folder} TEST_PREFIX "${folder}: " PROPERTIES ${ARGN})
endfunction()

set(all_but_window ${KW_FOLDERS})
list(REMOVE_ITEM all_but_window window)
foreach(folder IN LISTS all_but_window)
  kw_test(${folder} kw_${folder} LABELS ${folder})
endforeach()

# Every order there is, tried without the sanitizers and optimised: it is a source to check against, and takes most of the time. Last
# among the libraries, so that nothing else takes what both instantiate from here.
add_library(kw_brute STATIC ${tests}/brute/brute.cpp)
target_include_directories(kw_brute PUBLIC ${tests})
target_link_libraries(kw_brute PUBLIC kw_order PRIVATE kw_flags)
if(KW_SANITIZE)
  target_compile_options(kw_brute PRIVATE -O2 -fno-sanitize=all)
endif()
if(TARGET test_order)
  target_link_libraries(test_order PRIVATE kw_brute ${GLPK_LIBRARY})
endif()
if(TARGET test_cutting)
  target_link_libraries(test_cutting PRIVATE ${GLPK_LIBRARY})
endif()

# The checker makes drawers from a plan by itself. It shares nothing with src, not even the include path.
file(GLOB checker CONFIGURE_DEPENDS ${tests}/checker/*.cpp)
add_library(kw_checker STATIC ${checker})
target_include_directories(kw_checker PUBLIC ${tests})
target_link_libraries(kw_checker PUBLIC kw_3p_json PRIVATE kw_flags)
list(TRANSFORM all_but_window PREPEND kw_ OUTPUT_VARIABLE libraries)
kw_test(whole "${libraries};kw_checker" LABELS whole COST 100)  # the longest: not at the very end

target_link_libraries(test_print PRIVATE kw_checker)

# Simulated shops, for tests and benchmarks.
file(GLOB shop CONFIGURE_DEPENDS ${tests}/shop/*.cpp)
add_library(kw_simulated_shop STATIC ${shop})
target_include_directories(kw_simulated_shop PUBLIC ${tests})
target_link_libraries(kw_simulated_shop PUBLIC kw_memory PRIVATE kw_flags)
target_link_libraries(test_testcut PRIVATE kw_simulated_shop)

# The window's tests share one display, so they go one after another: begun first (COST), they leave the other processors to the rest.
# Leaks: a GL driver unloads itself before the sanitizer can name its frames.
kw_test(window "kw_window;kw_command;kw_checker" LABELS window RESOURCE_LOCK display COST 1000 ENVIRONMENT ASAN_OPTIONS=detect_leaks=0:malloc_context_size=3)
foreach(test test_whole test_window)
  if(TARGET ${test})
    add_dependencies(${test} kerfwright kw_assets)
  endif()
endforeach()

# Benchmarks: one program per file, built on request (./dev bench), and by ./dev asan so that they keep compiling.
add_custom_target(benches)
file(GLOB benches CONFIGURE_DEPENDS ${tests}/bench/*.cpp)
foreach(path IN LISTS benches)
  get_filename_component(name ${path} NAME_WE)
  add_executable(bench_${name} EXCLUDE_FROM_ALL ${path})
  target_link_libraries(bench_${name} PRIVATE kw_flags kw_command kw_window kw_checker kw_simulated_shop kw_test_base)
  target_include_directories(bench_${name} PRIVATE ${tests})
  add_dependencies(bench_${name} kerfwright kw_assets)
  add_dependencies(benches bench_${name})
endforeach()
if(TARGET bench_cutting)
  target_sources(bench_cutting PRIVATE ${tests}/cutting/check.cpp)  # what it measures is held to the tests' checker as well
endif()
if(TARGET bench_solvers)
  target_link_libraries(bench_solvers PRIVATE kw_brute)
endif()
