# Run by cpack on what it is about to pack: takes the compiler's name out of programs and libraries, which strip leaves.
find_program(BIDE_OBJCOPY objcopy)
file(GLOB_RECURSE binaries ${CPACK_TEMPORARY_INSTALL_DIRECTORY}/*.a ${CPACK_TEMPORARY_INSTALL_DIRECTORY}/*.so
     ${CPACK_TEMPORARY_INSTALL_DIRECTORY}/*/usr/bin/*)
foreach(binary ${binaries})
  execute_process(COMMAND ${BIDE_OBJCOPY} --remove-section=.comment ${binary} COMMAND_ERROR_IS_FATAL ANY)
endforeach()
