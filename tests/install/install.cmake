# Installs into a folder of its own, builds the consumer against that and nothing else, and runs it.
file(REMOVE_RECURSE ${WORK})
execute_process(COMMAND ${CMAKE_COMMAND} --install ${BUILD} --prefix ${WORK}/prefix OUTPUT_QUIET
                COMMAND_ERROR_IS_FATAL ANY)
execute_process(COMMAND ${CMAKE_COMMAND} -S ${CONSUMER} -B ${WORK}/build -G ${GENERATOR} -DCMAKE_BUILD_TYPE=Release
                        -DCMAKE_CXX_COMPILER=${COMPILER} -DCMAKE_PREFIX_PATH=${WORK}/prefix
                OUTPUT_QUIET COMMAND_ERROR_IS_FATAL ANY)
execute_process(COMMAND ${CMAKE_COMMAND} --build ${WORK}/build OUTPUT_VARIABLE log RESULT_VARIABLE code)
if(NOT code EQUAL 0)
  message(FATAL_ERROR "the consumer does not build:\n${log}")
endif()
execute_process(COMMAND ${WORK}/build/consumer ${SCENARIO} OUTPUT_VARIABLE out COMMAND_ERROR_IS_FATAL ANY)
file(READ ${SCENARIO} scenario)
string(JSON crew LENGTH "${scenario}" crew)
if(NOT out MATCHES "^${crew} aboard for ")
  message(FATAL_ERROR "the scenario has a crew of ${crew}, the consumer says: ${out}")
endif()
execute_process(COMMAND ${WORK}/prefix/bin/bide check ${SCENARIO} OUTPUT_QUIET COMMAND_ERROR_IS_FATAL ANY)
