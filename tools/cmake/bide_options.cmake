# Options and the compile flags every target shares, as interface targets.
option(BIDE_BUILD_TESTS "Build the tests" ON)
option(BIDE_WARNINGS_AS_ERRORS "Treat warnings as errors" OFF)
option(BIDE_SANITIZE "Build with the address and undefined-behaviour sanitizers" OFF)
set(BIDE_ARCH "" CACHE STRING "Whole-program -march value, for example x86-64-v3; empty is the portable baseline")

if(NOT CMAKE_BUILD_TYPE AND NOT CMAKE_CONFIGURATION_TYPES)
  set(CMAKE_BUILD_TYPE Release CACHE STRING "Build type" FORCE)
endif()

add_library(bide_options INTERFACE)
add_library(bide::options ALIAS bide_options)
target_compile_features(bide_options INTERFACE cxx_std_20)
# -ffp-contract=off: the same bits on every machine of one instruction set.
target_compile_options(bide_options INTERFACE -ffp-contract=off)
if(BIDE_ARCH)
  target_compile_options(bide_options INTERFACE -march=${BIDE_ARCH})
endif()
if(BIDE_SANITIZE)
  target_compile_options(bide_options INTERFACE -fsanitize=address,undefined -fno-omit-frame-pointer)
  target_link_options(bide_options INTERFACE -fsanitize=address,undefined)
endif()

add_library(bide_warnings INTERFACE)
add_library(bide::warnings ALIAS bide_warnings)
target_compile_options(bide_warnings INTERFACE
  -Wall -Wextra -Wpedantic -Wshadow -Wconversion -Wnon-virtual-dtor -Wold-style-cast -Wcast-align
  -Woverloaded-virtual -Wnull-dereference -Wdouble-promotion
  $<$<BOOL:${BIDE_WARNINGS_AS_ERRORS}>:-Werror>)
