# `bide odds` without a file: the same bits for the same clock and seed, a scenario that can be used again, the
# parts of the answer, and cautions.
file(REMOVE_RECURSE ${WORK})
file(MAKE_DIRECTORY ${WORK})
set(known --persons 2 --abandoned 9h --place 58,-12 --now 2031-11-29T21:00Z --ahead 6h --last-contact 6h -n 80 --seed 7)
foreach(run 1 2)
  execute_process(COMMAND ${BIDE} odds ${known} --threads ${run} -o ${WORK}/night_${run}.json
    INPUT_FILE /dev/null OUTPUT_FILE ${WORK}/text_${run} ERROR_VARIABLE told_${run} COMMAND_ERROR_IS_FATAL ANY)
endforeach()
file(READ ${WORK}/text_1 text)
file(READ ${WORK}/text_2 again)
file(READ ${WORK}/night_1.json scenario)
file(READ ${WORK}/night_2.json scenario_again)
if(NOT text STREQUAL again OR NOT scenario STREQUAL scenario_again)
  message(FATAL_ERROR "another answer with the same clock and seed:\n${text}\n${again}")
endif()
string(REGEX REPLACE "[ \n]+" " " flowing "${text}")
foreach(part "Now 29 Nov 21:00 UTC" "Abandoned 29 Nov 12:00 UTC" "Last contact 29 Nov 15:00 UTC" "all alive"
        "FROM NOW" "6 h" "30 Nov 03:00 UTC \\(02:00 local\\)" "somebody is still alive at" "ASK NEXT"
        "nobody reached a raft" "Never a reason to end, delay or narrow a search")
  if(NOT flowing MATCHES "${part}")
    message(FATAL_ERROR "not in the answer: ${part}\n${text}")
  endif()
endforeach()
if(NOT told_1 MATCHES "[0-9]+ futures so far")
  message(FATAL_ERROR "nothing was told while the futures were run:\n${told_1}")
endif()
# The scenario can be asked as a file, and says what is known.
execute_process(COMMAND ${BIDE} odds ${WORK}/night_1.json -n 8 OUTPUT_VARIABLE asked COMMAND_ERROR_IS_FATAL ANY)
if(NOT asked MATCHES "Given: all alive 3[.0]* h after the start")
  message(FATAL_ERROR "what is known got lost:\n${asked}")
endif()
# A file that exists is left alone unless forced.
execute_process(COMMAND ${BIDE} odds ${known} -o ${WORK}/night_1.json RESULT_VARIABLE code OUTPUT_VARIABLE out
                ERROR_VARIABLE err)
if(NOT code EQUAL 4 OR NOT err MATCHES "exists" OR NOT out STREQUAL "")
  message(FATAL_ERROR "exit code ${code}: ${err}")
endif()
# Described people, a known raft that is too small, a sea far from the month's: an answer with cautions.
execute_process(COMMAND ${BIDE} odds --crew "M40 F38 M12 F8 M70" --raft offshore_4 --sea 25 --air 24 --wind 4
    --clothing tropical --boarding dry --abandoned 2031-11-29T19:00Z --now 2031-11-29T21:00Z --place=-30,-12 --month 1
    --ahead 2h -n 4 --name Family --force -o ${WORK}/night_1.json
  INPUT_FILE /dev/null OUTPUT_VARIABLE out ERROR_VARIABLE err RESULT_VARIABLE code)
if(NOT code EQUAL 0 OR NOT out MATCHES "^Family" OR NOT err MATCHES "5 persons in a raft for 4")
  message(FATAL_ERROR "exit code ${code}: ${out}${err}")
endif()
# Without --now the machine's clock.
execute_process(COMMAND ${BIDE} odds --persons 1 --abandoned 1h --place 58,-12 --ahead 1h -n 4 --force -o
    ${WORK}/night_1.json INPUT_FILE /dev/null OUTPUT_QUIET ERROR_QUIET COMMAND_ERROR_IS_FATAL ANY)
file(READ ${WORK}/night_1.json scenario)
if(NOT scenario MATCHES "\"start_time_utc\": \"20[0-9][0-9]-")
  message(FATAL_ERROR "${scenario}")
endif()
