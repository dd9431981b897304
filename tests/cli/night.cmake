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
        "FROM NOW" "6 h" "30 Nov 03:00 UTC \\(02:00 local\\)" "last person, .*of futures after|last person, .*of them after" "Ask next" "priors"
        "Never a reason to end, delay or narrow a search")
  if(NOT flowing MATCHES "${part}")
    message(FATAL_ERROR "not in the answer: ${part}\n${text}")
  endif()
endforeach()
# While they are run: all able alone, for what is not in the model stands beside "somebody alive" in the answer only.
if(NOT told_1 MATCHES "[0-9]+ futures so far, all able: now [0-9]+ %" OR told_1 MATCHES "alive")
  message(FATAL_ERROR "while the futures were run:\n${told_1}")
endif()
# Of people of whom nothing is known no age is told, and the first hour is over.
if(NOT flowing MATCHES "Who first not told: who they are is drawn" OR
   NOT flowing MATCHES "Inside (coldest -?[0-9]+ [^ ]*C( to -?[0-9]+ [^ ]*C)? .8 in 10 futures.|no cabin)" OR
   NOT flowing MATCHES "Water (out|not out|no drinking)" OR flowing MATCHES "First hour|man, [0-9]")
  message(FATAL_ERROR "who, inside, water: ${text}")
endif()
execute_process(COMMAND ${BIDE} odds --crew "M40 F68" --abandoned 30min --place 58,-12 --now 2031-11-29T21:00Z -n 8
  INPUT_FILE /dev/null OUTPUT_VARIABLE soon ERROR_QUIET COMMAND_ERROR_IS_FATAL ANY)
string(REGEX REPLACE "[ \n]+" " " soon "${soon}")
if(NOT soon MATCHES "Who first .*First hour distress call")
  message(FATAL_ERROR "half an hour after: ${soon}")
endif()
# Table and JSON count from now, and say so: six hours are followed, the last contact was six hours ago.
execute_process(COMMAND ${BIDE} odds ${known} --csv ${WORK}/night.csv --json - --report ${WORK}/night.html
  INPUT_FILE /dev/null OUTPUT_VARIABLE json ERROR_QUIET COMMAND_ERROR_IS_FATAL ANY)
foreach(pair "hours_count_from,now" "hours_count_from_utc,2031-11-29T21:00Z" "start_time_utc,2031-11-29T12:00Z"
        "horizon_h,6" "local_time_is_utc_plus_h,-1")
  string(REPLACE "," ";" pair "${pair}")
  list(GET pair 0 key)
  list(GET pair 1 wanted)
  string(JSON found GET "${json}" ${key})
  if(NOT found MATCHES "^${wanted}(\\.0*)?$")
    message(FATAL_ERROR "${key} is ${found}, expected ${wanted}")
  endif()
endforeach()
string(JSON first GET "${json}" against_time 0 at_h)
string(JSON contact GET "${json}" known alive_at_h)
if(NOT first EQUAL 0 OR NOT contact EQUAL -6)
  message(FATAL_ERROR "the table begins at ${first} h, the last contact is at ${contact} h")
endif()
file(READ ${WORK}/night.csv csv)
if(NOT csv MATCHES "# time_h counts from now, 2031-11-29T21:00Z\n.*\n0,[^\n]*\n1,.*\n6,[^\n]*\n$")
  message(FATAL_ERROR "${csv}")
endif()
file(READ ${WORK}/night.html page)
if(NOT page MATCHES "followed for 6 h from now, 29 Nov 21:00 UTC" OR page MATCHES "time since the start")
  message(FATAL_ERROR "the page does not count from now")
endif()
# The rest on request: how the raft may have been reached.
execute_process(COMMAND ${BIDE} odds ${known} --full INPUT_FILE /dev/null OUTPUT_VARIABLE full ERROR_QUIET)
if(NOT full MATCHES "NOT KNOWN, AND DRAWN.*nobody[ \n]+reached[ \n]+a[ \n]+raft")
  message(FATAL_ERROR "${full}")
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
