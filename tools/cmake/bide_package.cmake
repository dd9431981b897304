# Debian packages, one for each component:   cmake --preset portable -DCMAKE_INSTALL_PREFIX=/usr, build, then
# `cpack -G DEB` in the build folder. From another preset a package runs only on processors of that preset, and its
# description says so: the instruction set is chosen when the engine is compiled, not when it runs.
find_program(BIDE_GZIP gzip)
mark_as_advanced(BIDE_GZIP)
set(CPACK_PACKAGE_NAME bide)
set(BIDE_PACKAGER "bide maintainers <bide@packages.invalid>" CACHE STRING "Who answers for the Debian packages")
mark_as_advanced(BIDE_PACKAGER)
set(CPACK_PACKAGE_CONTACT "${BIDE_PACKAGER}")
set(CPACK_DEBIAN_PACKAGE_RELEASE 1)
set(CPACK_PACKAGE_DESCRIPTION_SUMMARY "survival endurance of a crew in a life raft")
set(CPACK_PACKAGING_INSTALL_PREFIX /usr)
set(CPACK_STRIP_FILES ON)
set(CPACK_COMPONENTS_ALL program dev)
if(TARGET bide_python)
  list(APPEND CPACK_COMPONENTS_ALL python)
  get_property(python_minor GLOBAL PROPERTY bide_python_minor)
  math(EXPR python_next "${python_minor} + 1")
  set(CPACK_DEBIAN_PYTHON_PACKAGE_NAME python3-bide)
  set(CPACK_DEBIAN_PYTHON_PACKAGE_SECTION python)
  set(CPACK_DEBIAN_PYTHON_PACKAGE_DEPENDS
    "python3 (>= 3.${python_minor}), python3 (<< 3.${python_next}), python3-numpy")
  set(CPACK_DEBIAN_PYTHON_PACKAGE_RECOMMENDS "python3-pandas, python3-xarray")
endif()
if(EXISTS ${PROJECT_SOURCE_DIR}/build-browser/bide.html)
  list(APPEND CPACK_COMPONENTS_ALL page)
  set(CPACK_DEBIAN_PAGE_PACKAGE_NAME bide-page)
  set(CPACK_DEBIAN_PAGE_PACKAGE_SECTION science)
endif()
set(CPACK_DEB_COMPONENT_INSTALL ON)
set(CPACK_DEBIAN_ENABLE_COMPONENT_DEPENDS ON)
set(CPACK_DEBIAN_PACKAGE_SHLIBDEPS ON)
set(CPACK_DEBIAN_FILE_NAME DEB-DEFAULT)
set(CPACK_DEBIAN_PROGRAM_PACKAGE_NAME bide)
set(CPACK_DEBIAN_PROGRAM_PACKAGE_SECTION science)
set(CPACK_DEBIAN_DEV_PACKAGE_NAME bide-dev)
set(CPACK_DEBIAN_DEV_PACKAGE_SECTION libdevel)
set(CPACK_DEBIAN_DEV_PACKAGE_SHLIBDEPS OFF)
set(CPACK_DEBIAN_DEV_PACKAGE_DEPENDS
  "libeigen3-dev, libboost1.81-dev, nlohmann-json3-dev, libfmt-dev, libtbb-dev, libutf8proc-dev")
set(words
  "How long people in a life raft stay able and alive, over days: heat, water, food, air and hands of each person, in a raft or in the sea.")
if(BIDE_ARCH)
  string(APPEND words " This build needs a processor with the instruction set ${BIDE_ARCH}.")
endif()
set(CPACK_COMPONENT_PROGRAM_DESCRIPTION "program bide\n${words}")
set(CPACK_COMPONENT_DEV_DESCRIPTION "library and headers\n${words}")
set(CPACK_COMPONENT_PAGE_DESCRIPTION "page for a browser\n${words}")
set(CPACK_COMPONENT_PYTHON_DESCRIPTION "module of Python\n${words}")

# Copyright and changelogs of each package, the project's and that of the packaging, packed as Debian's policy asks.
if(BIDE_GZIP)
  string(TIMESTAMP today "%a, %d %b %Y %H:%M:%S +0000" UTC)
  file(CONFIGURE OUTPUT ${PROJECT_BINARY_DIR}/changelog.Debian CONTENT
"bide (${PROJECT_VERSION}-${CPACK_DEBIAN_PACKAGE_RELEASE}) unstable; urgency=medium

  * Packaged by cpack; what changed stands in changelog.gz.

 -- ${BIDE_PACKAGER}  ${today}
")
  set(changes)
  foreach(each ${PROJECT_SOURCE_DIR}/CHANGELOG.md ${PROJECT_BINARY_DIR}/changelog.Debian)
    get_filename_component(name ${each} NAME)
    string(REPLACE CHANGELOG.md changelog name ${name})
    set(packed ${PROJECT_BINARY_DIR}/packed/${name}.gz)
    add_custom_command(OUTPUT ${packed}
      COMMAND ${CMAKE_COMMAND} -E make_directory ${PROJECT_BINARY_DIR}/packed
      COMMAND sh -c "${BIDE_GZIP} -9nc ${each} > ${packed}"
      DEPENDS ${each} VERBATIM)
    list(APPEND changes ${packed})
  endforeach()
  add_custom_target(bide_changelog ALL DEPENDS ${changes})
endif()
foreach(component ${CPACK_COMPONENTS_ALL})
  string(TOUPPER ${component} upper)
  set(folder ${CMAKE_INSTALL_DATADIR}/doc/${CPACK_DEBIAN_${upper}_PACKAGE_NAME})
  install(FILES ${PROJECT_SOURCE_DIR}/LICENSE DESTINATION ${folder} RENAME copyright COMPONENT ${component})
  if(BIDE_GZIP)
    install(FILES ${changes} DESTINATION ${folder} COMPONENT ${component})
  endif()
endforeach()
include(CPack)
