# Options and the compile flags every target shares, as interface targets.
option(BIDE_BUILD_TESTS "Build the tests" ${PROJECT_IS_TOP_LEVEL})
set(BIDE_SANITIZE "" CACHE STRING "Sanitizers to build with, for example address,undefined or thread; empty is none")
set(BIDE_ARCH "" CACHE STRING "Whole-program -march value, for example x86-64-v3; empty is the portable baseline")

# Warnings stop the build under the compiler the project is written with; a newer one may know new warnings.
set(stop_at_warnings OFF)
if(PROJECT_IS_TOP_LEVEL AND CMAKE_CXX_COMPILER_ID STREQUAL "GNU" AND CMAKE_CXX_COMPILER_VERSION VERSION_LESS 13)
  set(stop_at_warnings ON)
endif()
option(BIDE_WARNINGS_AS_ERRORS "Treat warnings as errors" ${stop_at_warnings})

# Most of the time of a build goes into reading headers, so several sources of a folder are read as one. After a
# change of one source its whole batch is compiled again: for work on the sources leave it off.
option(BIDE_UNITY "Compile the sources of a folder in batches" OFF)
function(bide_in_batches target)
  set_target_properties(${target} PROPERTIES UNITY_BUILD ${BIDE_UNITY} UNITY_BUILD_BATCH_SIZE 12)
endfunction()

if(NOT CMAKE_BUILD_TYPE AND NOT CMAKE_CONFIGURATION_TYPES)
  set(CMAKE_BUILD_TYPE Release CACHE STRING "Build type" FORCE)
endif()

find_program(BIDE_CCACHE ccache)
mark_as_advanced(BIDE_CCACHE)
if(BIDE_CCACHE AND NOT CMAKE_CXX_COMPILER_LAUNCHER)
  set(CMAKE_CXX_COMPILER_LAUNCHER ${BIDE_CCACHE})
endif()

# The instruction set belongs to the interface: lanes are passed in vector registers, and Eigen aligns by it, so
# a program that links the engine must be compiled for the same one.
add_library(bide_options INTERFACE)
add_library(bide::options ALIAS bide_options)
target_compile_features(bide_options INTERFACE cxx_std_20)
# -ffp-contract=off: the same bits on every machine of one instruction set.
# -Wno-psabi: lanes wider than the registers change the calling convention between instruction sets, and here
# there is one instruction set for the whole program.
target_compile_options(bide_options INTERFACE -ffp-contract=off -Wno-psabi)
if(BIDE_ARCH)
  target_compile_options(bide_options INTERFACE -march=${BIDE_ARCH})
endif()
# On a processor that lacks it, the loader says so ("CPU ISA level is lower than required"), where the program would
# end at the first instruction that is not there.
if(BIDE_ARCH MATCHES "^x86-64-v[234]$")
  include(CheckLinkerFlag)
  check_linker_flag(CXX -Wl,-z,${BIDE_ARCH} bide_linker_knows_${BIDE_ARCH})
  if(bide_linker_knows_${BIDE_ARCH})
    target_link_options(bide_options INTERFACE -Wl,-z,${BIDE_ARCH})
  endif()
endif()
if(BIDE_SANITIZE)
  target_compile_options(bide_options INTERFACE -fsanitize=${BIDE_SANITIZE} -fno-sanitize-recover=all
                                                -fno-omit-frame-pointer)
  target_link_options(bide_options INTERFACE -fsanitize=${BIDE_SANITIZE})
endif()

add_library(bide_warnings INTERFACE)
add_library(bide::warnings ALIAS bide_warnings)
# clang++ puts the sign of indices under -Wconversion, g++ does not: both are asked the same.
# -Wnull-dereference is clang's: optimising, g++ 12 sees null in every std::vector.
# -Wrestrict of g++ 12 is wrong about adding strings (GCC bug 105651), -Wuninitialized about its own AVX-512
# headers (GCC bug 105593).
target_compile_options(bide_warnings INTERFACE
  -Wall -Wextra -Wpedantic -Wshadow -Wconversion -Wnon-virtual-dtor -Wold-style-cast -Wcast-align
  -Woverloaded-virtual -Wdouble-promotion
  $<$<CXX_COMPILER_ID:Clang>:-Wnull-dereference>
  $<$<CXX_COMPILER_ID:Clang>:-Wno-sign-conversion>
  $<$<AND:$<CXX_COMPILER_ID:GNU>,$<VERSION_LESS:$<CXX_COMPILER_VERSION>,13>>:-Wno-restrict>
  $<$<AND:$<CXX_COMPILER_ID:GNU>,$<VERSION_LESS:$<CXX_COMPILER_VERSION>,13>,$<STREQUAL:${BIDE_ARCH},x86-64-v4>>:-Wno-uninitialized$<SEMICOLON>-Wno-maybe-uninitialized>
  $<$<BOOL:${BIDE_WARNINGS_AS_ERRORS}>:-Werror>)
