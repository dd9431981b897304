# The kit that is found is aboard in the scenario that is written, and stands in the JSON. BIDE, SCENARIO, WORK
file(REMOVE_RECURSE ${WORK})
file(MAKE_DIRECTORY ${WORK})
execute_process(COMMAND ${BIDE} provision ${SCENARIO} --until 7d --confidence 0.8 -n 64 --fresh 128 -o ${WORK}/kit.json
                        --json ${WORK}/found.json OUTPUT_QUIET COMMAND_ERROR_IS_FATAL ANY)
execute_process(COMMAND ${BIDE} check ${WORK}/kit.json OUTPUT_QUIET COMMAND_ERROR_IS_FATAL ANY)
file(READ ${WORK}/found.json found)
string(JSON format GET "${found}" format)
string(JSON met GET "${found}" least_on_fresh_futures met)
string(JSON bound GET "${found}" least_on_fresh_futures share_at_least)
string(JSON lever GET "${found}" least kit 0 lever)
if(NOT format STREQUAL "bide provision 1" OR met GREATER 128 OR bound LESS 0.8)
  message(FATAL_ERROR "${format}: ${met} of 128 futures, at least ${bound}")
endif()
# What is found is no lighter than the file says: the same question of the scenario with the kit aboard needs nothing.
execute_process(COMMAND ${BIDE} provision ${WORK}/kit.json --until 7d --confidence 0.8 -n 64 --fresh 128
                OUTPUT_VARIABLE again COMMAND_ERROR_IS_FATAL ANY)
if(NOT again MATCHES "\nWhat is aboard already is enough")
  message(FATAL_ERROR "with ${lever} aboard:\n${again}")
endif()
