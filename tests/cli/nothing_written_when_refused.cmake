# A refused scenario leaves no file behind, not even an empty one; nor does a run whose second output has no folder.
file(REMOVE_RECURSE ${WORK})
file(MAKE_DIRECTORY ${WORK})
execute_process(COMMAND ${BIDE} run ${REFUSED} --timeline ${WORK}/timeline.csv --json ${WORK}/result.json
                RESULT_VARIABLE refused OUTPUT_QUIET ERROR_QUIET)
execute_process(COMMAND ${BIDE} run ${MINIMAL} --timeline ${WORK}/timeline.csv --json ${WORK}/none/result.json
                RESULT_VARIABLE unwritable OUTPUT_QUIET ERROR_QUIET)
file(GLOB left ${WORK}/*)
if(NOT refused EQUAL 2 OR NOT unwritable EQUAL 4 OR left)
  message(FATAL_ERROR "exit codes ${refused} (2 due) and ${unwritable} (4 due), files left: ${left}")
endif()
