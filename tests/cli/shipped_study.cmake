# A shipped study is accepted and its first shard runs to its end.   BIDE, WORK, STUDY
# From an empty folder: records of an earlier build are refused, as they should be.
file(REMOVE_RECURSE ${WORK})
file(MAKE_DIRECTORY ${WORK})
execute_process(COMMAND ${BIDE} study ${STUDY} --out made --shard 1/1000 WORKING_DIRECTORY ${WORK}
                COMMAND_ERROR_IS_FATAL ANY OUTPUT_VARIABLE said)
if(NOT said MATCHES "^shard 1 of 1000 is done")
  message(FATAL_ERROR "said: ${said}")
endif()
