# Packs what stands in BUILD as Debian packages, and looks into them: control fields, what is where, that the program in
# them runs, and what lintian says. The page is left out, for it may be of other sources.
# BUILD, WORK, COMPONENTS, DPKG_DEB, LINTIAN (empty where it is not installed), CHARTS
cmake_policy(VERSION 3.25)
file(REMOVE_RECURSE ${WORK})
execute_process(COMMAND ${CMAKE_CPACK_COMMAND} -G DEB --config ${BUILD}/CPackConfig.cmake -B ${WORK}
                        -D "CPACK_COMPONENTS_ALL=${COMPONENTS}"
                RESULT_VARIABLE code OUTPUT_VARIABLE said ERROR_VARIABLE said)
if(NOT code EQUAL 0)
  message(FATAL_ERROR "cpack: ${said}")
endif()
file(GLOB packages ${WORK}/*.deb)
list(LENGTH packages found)
list(LENGTH COMPONENTS due)
if(NOT found EQUAL due)
  message(FATAL_ERROR "${due} components made ${found} packages: ${packages}")
endif()

# field(RESULT PACKAGE NAME)
function(field result package name)
  execute_process(COMMAND ${DPKG_DEB} -f ${package} ${name} OUTPUT_VARIABLE value OUTPUT_STRIP_TRAILING_WHITESPACE
                  COMMAND_ERROR_IS_FATAL ANY)
  set(${result} "${value}" PARENT_SCOPE)
endfunction()
foreach(package ${packages})
  field(name ${package} Package)
  field(depends ${package} Depends)
  execute_process(COMMAND ${DPKG_DEB} -x ${package} ${WORK}/root COMMAND_ERROR_IS_FATAL ANY)
  if(name STREQUAL "bide-dev")
    set(needs libeigen3-dev)
  else()
    set(needs "libtbb12 ")  # found by dpkg-shlibdeps in the program itself
  endif()
  if(NOT depends MATCHES "${needs}")
    message(FATAL_ERROR "${name} does not depend on ${needs}: ${depends}")
  endif()
  file(READ ${WORK}/root/usr/share/doc/${name}/copyright copyright)
  if(NOT copyright MATCHES "Permission is hereby granted, free of charge" OR (CHARTS AND NOT copyright MATCHES "Mike Bostock"))
    message(FATAL_ERROR "${name}: the copyright lacks a licence")
  endif()
endforeach()

set(usr ${WORK}/root/usr)
foreach(file include/bide/bide.hpp share/bide/scenarios/cold_sea_dry.json share/bash-completion/completions/bide
             share/doc/bide/changelog.gz)
  if(NOT EXISTS ${usr}/${file})
    message(FATAL_ERROR "${file} is in none of the packages")
  endif()
endforeach()
if("python" IN_LIST COMPONENTS AND NOT EXISTS ${usr}/lib/python3/dist-packages/bide-stubs/__init__.pyi)
  message(FATAL_ERROR "the Python package has no stubs")
endif()
execute_process(COMMAND gzip -dc ${usr}/share/man/man1/bide.1.gz OUTPUT_VARIABLE manual COMMAND_ERROR_IS_FATAL ANY)
execute_process(COMMAND ${usr}/bin/bide --man OUTPUT_VARIABLE printed COMMAND_ERROR_IS_FATAL ANY)
if(NOT manual STREQUAL printed)
  message(FATAL_ERROR "the manual page is not the program's")
endif()
execute_process(COMMAND ${usr}/bin/bide run ${usr}/share/bide/scenarios/cold_sea_dry.json --quiet OUTPUT_QUIET ERROR_QUIET
                COMMAND_ERROR_IS_FATAL ANY)

if(LINTIAN)
  execute_process(COMMAND ${LINTIAN} --fail-on error,warning ${packages} RESULT_VARIABLE code OUTPUT_VARIABLE said
                  ERROR_QUIET)
  if(NOT code EQUAL 0)
    message(FATAL_ERROR "lintian: ${said}")
  endif()
else()
  message(STATUS "no lintian here: nothing was asked of it")
endif()
