# bide_folder(NAME DEPS...): one target bide_NAME per engine folder, from the sources that lie in it.
# The folder may include itself and the folders named in DEPS, nothing else.
# Includes carry the project's name ("bide/body/shivering.hpp"), here as in an installed copy: a link in the
# build folder gives engine/ that name.
set(bide_include_root ${PROJECT_BINARY_DIR}/include)
file(MAKE_DIRECTORY ${bide_include_root})
file(CREATE_LINK ${PROJECT_SOURCE_DIR}/engine ${bide_include_root}/bide SYMBOLIC)
set(bide_in_shared_libraries ON)
if(EMSCRIPTEN)
  set(bide_in_shared_libraries OFF)  # there it would only cost speed
endif()
function(bide_folder name)
  file(GLOB_RECURSE sources CONFIGURE_DEPENDS ${CMAKE_CURRENT_SOURCE_DIR}/${name}/*.cpp)
  if(sources)
    add_library(bide_${name} STATIC ${sources})
    set(scope PUBLIC)
    target_link_libraries(bide_${name} PRIVATE $<BUILD_INTERFACE:bide::warnings>)
    set_target_properties(bide_${name} PROPERTIES POSITION_INDEPENDENT_CODE ${bide_in_shared_libraries})
    bide_in_batches(bide_${name})
  else()
    add_library(bide_${name} INTERFACE)
    set(scope INTERFACE)
  endif()
  add_library(bide::${name} ALIAS bide_${name})
  target_include_directories(bide_${name} ${scope} $<BUILD_INTERFACE:${bide_include_root}>
                                                   $<INSTALL_INTERFACE:include>)
  target_link_libraries(bide_${name} ${scope} bide::options ${ARGN})
  set_property(GLOBAL APPEND PROPERTY bide_folders ${name})
endfunction()

# What every doctest program starts with, compiled once.
function(bide_test_main)
  add_library(bide_test_main OBJECT ${CMAKE_CURRENT_SOURCE_DIR}/support/main.cpp)
  target_link_libraries(bide_test_main PRIVATE bide::options doctest::doctest)
endfunction()

# bide_test_folder(NAME LABEL LIBS...): one doctest program from tests/NAME/*_test.cpp.
function(bide_test_folder name label)
  file(GLOB sources CONFIGURE_DEPENDS ${CMAKE_CURRENT_SOURCE_DIR}/${name}/*_test.cpp)
  if(NOT sources)
    return()
  endif()
  add_executable(test_${name} ${sources} $<TARGET_OBJECTS:bide_test_main>)
  target_include_directories(test_${name} PRIVATE ${CMAKE_CURRENT_SOURCE_DIR})
  target_compile_definitions(test_${name} PRIVATE BIDE_SOURCE_DIR="${PROJECT_SOURCE_DIR}")
  target_link_libraries(test_${name} PRIVATE bide::warnings doctest::doctest ${ARGN})
  add_test(NAME ${name} COMMAND test_${name})
  set(longest_s 900)
  if(BIDE_SANITIZE)
    set(longest_s 7200)  # up to ten times slower
  endif()
  set_tests_properties(${name} PROPERTIES LABELS ${label} TIMEOUT ${longest_s})
endfunction()
