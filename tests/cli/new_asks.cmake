# Questions: a wrong answer is asked again with the reason, "?" lists the choices, earlier answers stay, and a file
# that exists costs no answers.
file(REMOVE_RECURSE ${WORK})
file(MAKE_DIRECTORY ${WORK})
file(WRITE ${WORK}/taken.json "mine")
file(WRITE ${WORK}/answers "M40 X2\n100\nM3:14:2.0\nM40 F38\n?\ngalleon\ncoastal_6\n\nBiskay\n52,13\nBiscay in May\nsoon\n2\n\nrow\nswim\n${WORK}/taken.json\n${WORK}/free.json\n")
execute_process(COMMAND ${BIDE} new --ask -o ${WORK}/taken.json INPUT_FILE ${WORK}/answers ERROR_VARIABLE said
                RESULT_VARIABLE code)
file(READ ${WORK}/taken.json kept)
if(NOT code EQUAL 0 OR NOT kept STREQUAL "mine" OR NOT EXISTS ${WORK}/free.json)
  message(FATAL_ERROR "exit code ${code}, the file now holds: ${kept}\n${said}")
endif()
foreach(part "found \"X2\"" "no raft of the catalogue holds 100" "Person A: height: found 2" "coastal_6: 6-person coastal raft" "galleon is not in the list"
        "did you mean \"Biscay\"" "52° N 13° E is land" "a number from" "boarding row: allowed dry" "taken.json exists")
  if(NOT said MATCHES "${part}")
    message(FATAL_ERROR "not said: ${part}\n${said}")
  endif()
endforeach()
file(READ ${WORK}/free.json scenario)
foreach(part "\"age_years\": 38" "\"coastal_6\"" "\"duration_h\": 48" "2031-05-15" "\"swim\"")
  if(NOT scenario MATCHES "${part}")
    message(FATAL_ERROR "an answer got lost: ${part}\n${scenario}")
  endif()
endforeach()
# A folder that is not there is said before the first question.
execute_process(COMMAND ${BIDE} new --ask -o ${WORK}/no_folder/x.json INPUT_FILE ${WORK}/answers ERROR_VARIABLE said
                RESULT_VARIABLE code)
if(NOT code EQUAL 4 OR said MATCHES "Crew")
  message(FATAL_ERROR "exit code ${code}\n${said}")
endif()
