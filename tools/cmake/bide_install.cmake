# Installs, in the components `program`, `dev`, `python`, `mpi` and `page`, the program, the public header and the libraries,
# and what find_package(bide) needs to offer them as bide::<folder>, with bide::bide for all of them.
include(CMakePackageConfigHelpers)
include(GNUInstallDirs)
include(bide_headers)
include(bide_packed)
include(bide_page_sources)

get_property(folders GLOBAL PROPERTY bide_folders)
set(targets bide_options bide_all)
add_library(bide_all INTERFACE)
add_library(bide::bide ALIAS bide_all)
set_target_properties(bide_all PROPERTIES EXPORT_NAME bide)
set_target_properties(bide_options PROPERTIES EXPORT_NAME options)
foreach(folder ${folders})
  set_target_properties(bide_${folder} PROPERTIES EXPORT_NAME ${folder})
  target_link_libraries(bide_all INTERFACE bide_${folder})
  list(APPEND targets bide_${folder})
endforeach()

install(TARGETS ${targets} EXPORT bide_targets
  ARCHIVE DESTINATION ${CMAKE_INSTALL_LIBDIR} COMPONENT dev
  INCLUDES DESTINATION ${CMAKE_INSTALL_INCLUDEDIR})
install(TARGETS bide RUNTIME DESTINATION ${CMAKE_INSTALL_BINDIR} COMPONENT program)
# Of the headers, bide/bide.hpp and what it needs; found again whenever one of them is edited.
bide_headers(headers ${PROJECT_SOURCE_DIR}/engine bide.hpp)
foreach(header ${headers})
  get_filename_component(folder ${header} DIRECTORY)
  install(FILES ${PROJECT_SOURCE_DIR}/engine/${header} DESTINATION ${CMAKE_INSTALL_INCLUDEDIR}/bide/${folder}
    COMPONENT dev)
endforeach()
list(TRANSFORM headers PREPEND ${PROJECT_SOURCE_DIR}/engine/)
set_property(DIRECTORY APPEND PROPERTY CMAKE_CONFIGURE_DEPENDS ${headers})
install(FILES ${PROJECT_SOURCE_DIR}/engine/constants/references.bib DESTINATION ${CMAKE_INSTALL_DATADIR}/bide
  COMPONENT program)
# The page with the engine in it, where tools/page has made one.
bide_install_page(${PROJECT_SOURCE_DIR}/build-browser/bide.html)
install(DIRECTORY ${PROJECT_SOURCE_DIR}/scenarios DESTINATION ${CMAKE_INSTALL_DATADIR}/bide COMPONENT program)
# A program writes its own manual page and completion.
add_custom_target(bide_manual ALL)
function(bide_install_manual program component)
  set(written ${PROJECT_BINARY_DIR}/${program}.1 ${PROJECT_BINARY_DIR}/${program}.bash)
  add_custom_command(OUTPUT ${written}
    COMMAND ${program} --man > ${PROJECT_BINARY_DIR}/${program}.1
    COMMAND ${program} --bash-completion > ${PROJECT_BINARY_DIR}/${program}.bash
    DEPENDS ${program} VERBATIM)
  bide_packed(page ${PROJECT_BINARY_DIR}/${program}.1 ${program}.1)
  add_custom_target(${program}_manual_page DEPENDS ${written} ${page})
  add_dependencies(bide_manual ${program}_manual_page)
  install(FILES ${page} DESTINATION ${CMAKE_INSTALL_MANDIR}/man1 COMPONENT ${component})
  install(FILES ${PROJECT_BINARY_DIR}/${program}.bash DESTINATION ${CMAKE_INSTALL_DATADIR}/bash-completion/completions
    RENAME ${program} COMPONENT ${component})
endfunction()
bide_install_manual(bide program)
if(TARGET bide_mpi)
  install(TARGETS bide_mpi RUNTIME DESTINATION ${CMAKE_INSTALL_BINDIR} COMPONENT mpi)
  bide_install_manual(bide_mpi mpi)
endif()

set(package_folder ${CMAKE_INSTALL_LIBDIR}/cmake/bide)
install(EXPORT bide_targets NAMESPACE bide:: DESTINATION ${package_folder} COMPONENT dev)
configure_package_config_file(${PROJECT_SOURCE_DIR}/tools/cmake/bideConfig.cmake.in
  ${PROJECT_BINARY_DIR}/bideConfig.cmake INSTALL_DESTINATION ${package_folder})
write_basic_package_version_file(${PROJECT_BINARY_DIR}/bideConfigVersion.cmake COMPATIBILITY SameMinorVersion)
install(FILES ${PROJECT_BINARY_DIR}/bideConfig.cmake ${PROJECT_BINARY_DIR}/bideConfigVersion.cmake
              ${PROJECT_SOURCE_DIR}/tools/cmake/Findutf8proc.cmake
  DESTINATION ${package_folder} COMPONENT dev)
