# A study over one rank of MPI and over three: the same bytes as without.   BIDE, WORK, STUDY, BIDE_MPI, MPIRUN
if(NOT BIDE_MPI)
  message("skipped: no MPI was found when this was configured")
  return()
endif()
file(REMOVE_RECURSE ${WORK})
file(MAKE_DIRECTORY ${WORK})
execute_process(COMMAND ${BIDE} study ${STUDY} --out plain --csv WORKING_DIRECTORY ${WORK}
                COMMAND_ERROR_IS_FATAL ANY OUTPUT_QUIET)
foreach(ranks 1 3)
  execute_process(COMMAND ${CMAKE_COMMAND} -E env OMPI_ALLOW_RUN_AS_ROOT=1 OMPI_ALLOW_RUN_AS_ROOT_CONFIRM=1
                          ${MPIRUN} --oversubscribe -n ${ranks} ${BIDE_MPI} study ${STUDY} --out mpi_${ranks} --csv
                  WORKING_DIRECTORY ${WORK} COMMAND_ERROR_IS_FATAL ANY OUTPUT_QUIET)
  foreach(name study.records results.csv summary.json summary.txt)
    file(SHA256 ${WORK}/plain/${name} first)
    file(SHA256 ${WORK}/mpi_${ranks}/${name} second)
    if(NOT first STREQUAL second)
      message(FATAL_ERROR "${name} differs over ${ranks} ranks")
    endif()
  endforeach()
endforeach()
