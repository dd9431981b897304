# Standard output that cannot be written is exit code 4, whatever is printed.   BIDE, WORK, MINIMAL, STUDY
if(NOT EXISTS /dev/full)
  message("skipped: there is no /dev/full")
  return()
endif()
file(REMOVE_RECURSE ${WORK})
file(MAKE_DIRECTORY ${WORK})
set(wrong)
foreach(command "study|${STUDY}|--out|part|--shard|1/2" "study|${STUDY}|--out|part|--shard|2/2" "merge|part"
        "study|${STUDY}|--out|part" "run|${MINIMAL}" "check|${MINIMAL}" "levers|${MINIMAL}" "schema" "catalogue" "--help"
        "run|--help")
  string(REPLACE "|" ";" command "${command}")
  execute_process(COMMAND ${BIDE} ${command} WORKING_DIRECTORY ${WORK} RESULT_VARIABLE code OUTPUT_FILE /dev/full
                  ERROR_VARIABLE err)
  if(NOT code EQUAL 4 OR NOT err MATCHES "standard output")
    string(APPEND wrong "${command}: exit code ${code}, \"${err}\"\n")
  endif()
endforeach()
if(wrong)
  message(FATAL_ERROR "${wrong}")
endif()
# A device is not replaced by a workbook: it stays what it is.
find_program(mkfifo mkfifo REQUIRED)
execute_process(COMMAND ${mkfifo} ${WORK}/pipe COMMAND_ERROR_IS_FATAL ANY)
execute_process(COMMAND ${BIDE} run ${MINIMAL} --xlsx ${WORK}/pipe RESULT_VARIABLE code ERROR_VARIABLE err OUTPUT_QUIET)
execute_process(COMMAND test -p ${WORK}/pipe RESULT_VARIABLE still)
if(NOT code EQUAL 4 OR NOT still EQUAL 0)
  message(FATAL_ERROR "a workbook onto a pipe: exit code ${code}, \"${err}\", pipe gone: ${still}")
endif()
