# Debian packages, one for each component: tools/package makes them from the preset `portable`. From another preset a
# package runs only on processors of that preset, and its description says so: the instruction set is chosen when the
# engine is compiled, not when it runs (DEVELOPERS.md says why).
set(CPACK_PACKAGE_NAME bide)
set(BIDE_PACKAGER "bide maintainers <bide@packages.invalid>" CACHE STRING "Who answers for the Debian packages")
mark_as_advanced(BIDE_PACKAGER)
set(CPACK_PACKAGE_CONTACT "${BIDE_PACKAGER}")
set(CPACK_DEBIAN_PACKAGE_RELEASE 1)
set(CPACK_PACKAGE_DESCRIPTION_SUMMARY "")  # each has its own, the first line of its description
set(CPACK_PACKAGING_INSTALL_PREFIX /usr)
set(CPACK_STRIP_FILES ON)
set(CPACK_PRE_BUILD_SCRIPTS ${CMAKE_CURRENT_LIST_DIR}/bide_package_strip.cmake)
set(CPACK_DEB_COMPONENT_INSTALL ON)
set(CPACK_DEBIAN_ENABLE_COMPONENT_DEPENDS ON)
set(CPACK_DEBIAN_PACKAGE_SHLIBDEPS ON)
set(CPACK_DEBIAN_FILE_NAME DEB-DEFAULT)
set(words
"How long people in a life raft, or in the sea, stay able and alive, over days:
heat, water, food, air and hands of each person, which limit ends each, and
what would buy time. A planning and training aid, never a reason to end, delay
or narrow a search.")
if(BIDE_ARCH)
  string(APPEND words "\nThis build needs a processor with the instruction set ${BIDE_ARCH}.")
endif()

set(CPACK_COMPONENTS_ALL program dev)
set(CPACK_DEBIAN_PROGRAM_PACKAGE_NAME bide)
set(CPACK_DEBIAN_PROGRAM_PACKAGE_SECTION science)
set(CPACK_DEBIAN_PROGRAM_PACKAGE_SUGGESTS "bash-completion, bide-page, python3-bide")
set(CPACK_COMPONENT_PROGRAM_DESCRIPTION "how long a crew in a life raft stays able and alive\n${words}")
set(CPACK_DEBIAN_DEV_PACKAGE_NAME bide-dev)
set(CPACK_DEBIAN_DEV_PACKAGE_SECTION libdevel)
set(CPACK_DEBIAN_DEV_PACKAGE_SHLIBDEPS OFF)
set(CPACK_DEBIAN_DEV_PACKAGE_DEPENDS
  "libeigen3-dev, libboost1.81-dev, nlohmann-json3-dev, libfmt-dev, libtbb-dev, libutf8proc-dev")
set(CPACK_COMPONENT_DEV_DESCRIPTION
  "how long a crew in a life raft stays able and alive: C++ library\n${words}\nThis is the library, static, with its headers and what CMake needs to find it.")
if(TARGET bide_python)
  list(APPEND CPACK_COMPONENTS_ALL python)
  get_property(python_minor GLOBAL PROPERTY bide_python_minor)
  math(EXPR python_next "${python_minor} + 1")
  set(CPACK_DEBIAN_PYTHON_PACKAGE_NAME python3-bide)
  set(CPACK_DEBIAN_PYTHON_PACKAGE_SECTION python)
  set(CPACK_DEBIAN_PYTHON_PACKAGE_DEPENDS
    "python3 (>= 3.${python_minor}), python3 (<< 3.${python_next}), python3-numpy")
  set(CPACK_DEBIAN_PYTHON_PACKAGE_RECOMMENDS "python3-pandas, python3-xarray")
  set(CPACK_COMPONENT_PYTHON_DESCRIPTION
    "how long a crew in a life raft stays able and alive: Python module\n${words}\nThis is the module for Python.")
endif()
if(TARGET bide_mpi)
  list(APPEND CPACK_COMPONENTS_ALL mpi)
  set(CPACK_DEBIAN_MPI_PACKAGE_NAME bide-mpi)
  set(CPACK_DEBIAN_MPI_PACKAGE_SECTION science)
  set(CPACK_DEBIAN_MPI_PACKAGE_DEPENDS openmpi-bin)  # it has mpirun; the libraries are found in the program
  set(CPACK_DEBIAN_MPI_PACKAGE_RECOMMENDS bide)
  set(CPACK_COMPONENT_MPI_DESCRIPTION
    "how long a crew in a life raft stays able and alive: studies over MPI\n${words}\nThis is bide_mpi, which shares a study out over the processes of MPI.")
endif()
if(EXISTS ${PROJECT_SOURCE_DIR}/build-browser/bide.html)
  list(APPEND CPACK_COMPONENTS_ALL page)
  set(CPACK_DEBIAN_PAGE_PACKAGE_NAME bide-page)
  set(CPACK_DEBIAN_PAGE_PACKAGE_SECTION science)
  set(CPACK_DEBIAN_PAGE_PACKAGE_ARCHITECTURE all)
  set(CPACK_DEBIAN_PAGE_PACKAGE_SHLIBDEPS OFF)
  set(CPACK_COMPONENT_PAGE_DESCRIPTION
    "how long a crew in a life raft stays able and alive: page for browsers\n${words}\nThis is one page with the whole program in it: /usr/share/bide/bide.html opens\nin a browser from the disk and needs no network.")
endif()

# The changelogs, the project's and that of the packaging.
string(TIMESTAMP today "%a, %d %b %Y %H:%M:%S +0000" UTC)
file(CONFIGURE OUTPUT ${PROJECT_BINARY_DIR}/changelog.Debian CONTENT
"bide (${PROJECT_VERSION}-${CPACK_DEBIAN_PACKAGE_RELEASE}) unstable; urgency=medium

  * Packaged by cpack; what changed stands in changelog.gz.

 -- ${BIDE_PACKAGER}  ${today}
")
bide_packed(changelog ${PROJECT_SOURCE_DIR}/CHANGELOG.md changelog)
bide_packed(debian_changelog ${PROJECT_BINARY_DIR}/changelog.Debian changelog.Debian)
# The licence, and those of what draws the charts of pages.
set(copyright ${PROJECT_BINARY_DIR}/copyright)
add_custom_command(OUTPUT ${copyright}
  COMMAND ${CMAKE_COMMAND} -DLICENCE=${PROJECT_SOURCE_DIR}/LICENSE
          -DSCRIPT=${PROJECT_BINARY_DIR}/engine/charts/$<IF:$<BOOL:${BIDE_CHARTS}>,out,none>/charts_script.txt
          -DOUTPUT=${copyright} -P ${CMAKE_CURRENT_LIST_DIR}/bide_copyright.cmake
  DEPENDS bide_report ${PROJECT_SOURCE_DIR}/LICENSE ${CMAKE_CURRENT_LIST_DIR}/bide_copyright.cmake VERBATIM)
add_custom_target(bide_documents_of_packages ALL DEPENDS ${changelog} ${debian_changelog} ${copyright})

foreach(component ${CPACK_COMPONENTS_ALL})
  string(TOUPPER ${component} upper)
  set(package ${CPACK_DEBIAN_${upper}_PACKAGE_NAME})
  install(FILES ${copyright} ${changelog} ${debian_changelog} DESTINATION ${CMAKE_INSTALL_DATADIR}/doc/${package}
    COMPONENT ${component})
  # What lintian has no need to say, and why.
  set(overrides
"# No upload to Debian's archive: no bug there asks for it.
${package}: initial-upload-closes-no-bugs
")
  if(component STREQUAL program)
    string(APPEND overrides
"# Scenarios, lessons and weather link to one another, and stay together.
${package}: package-contains-documentation-outside-usr-share-doc [usr/share/bide/scenarios/*]
")
  elseif(component STREQUAL page)
    string(APPEND overrides
"# The page is the program itself.
${package}: package-contains-documentation-outside-usr-share-doc [usr/share/bide/bide.html]
")
  endif()
  file(WRITE ${PROJECT_BINARY_DIR}/overrides/${package} "${overrides}")
  install(FILES ${PROJECT_BINARY_DIR}/overrides/${package} DESTINATION ${CMAKE_INSTALL_DATADIR}/lintian/overrides
    COMPONENT ${component} EXCLUDE_FROM_ALL)
endforeach()

# What the packages hold, and nothing else.
add_custom_target(bide_packed)
add_dependencies(bide_packed bide bide_manual bide_documents_of_packages)
foreach(optional bide_python bide_mpi)
  if(TARGET ${optional})
    add_dependencies(bide_packed ${optional})
  endif()
endforeach()
include(CPack)
