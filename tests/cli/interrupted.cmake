# A signal ends a long command with exit code 130 and says what is kept; a study goes on from there.
# BIDE, WORK, UNCERTAIN, STUDY
file(REMOVE_RECURSE ${WORK})
file(MAKE_DIRECTORY ${WORK})
# The same study with so many samples that it cannot end before the signal.
file(READ ${STUDY} study)
string(JSON study SET "${study}" design "{\"kind\": \"random\", \"samples\": 1000000}")
string(JSON name GET "${study}" scenario)
get_filename_component(folder ${STUDY} DIRECTORY)
string(JSON study SET "${study}" scenario "\"${folder}/${name}\"")
file(WRITE ${WORK}/many.json "${study}")

function(interrupted signal words)
  execute_process(COMMAND timeout --preserve-status --signal ${signal} 2 ${BIDE} ${ARGN} WORKING_DIRECTORY ${WORK}
                  RESULT_VARIABLE code OUTPUT_VARIABLE out ERROR_VARIABLE err)
  if(NOT code EQUAL 130 OR NOT out STREQUAL "" OR NOT err MATCHES "${words}")
    message(FATAL_ERROR "${ARGN}: exit code ${code}, output \"${out}\", error \"${err}\"")
  endif()
endfunction()
interrupted(INT "interrupted. What is recorded in many_results/study.records is kept; the same command goes on"
            study many.json)
interrupted(TERM "interrupted. Nothing is kept of odds" odds ${UNCERTAIN} -n 1000000)
interrupted(HUP "interrupted. Nothing is kept of odds" odds ${UNCERTAIN} -n 1000000)
interrupted(TERM "interrupted. Nothing is kept of a comparison" validate)
interrupted(INT "interrupted. Nothing is kept of a comparison" compare ${UNCERTAIN} ${UNCERTAIN} -n 1000000)
interrupted(INT "interrupted. Nothing is kept of a table" choose ${UNCERTAIN} --rafts offshore_4,offshore_8
            --help-after 24h -n 1000000)
interrupted(INT "interrupted. Nothing is kept of a search" provision ${UNCERTAIN} --until 3d -n 1000000)
# A hundred people for sixty days: one run of them takes seconds.
execute_process(COMMAND ${BIDE} new --crew 100 --raft solas_25 --place Biscay --month 2 --days 60 -o many_people.json
                WORKING_DIRECTORY ${WORK} OUTPUT_QUIET ERROR_QUIET COMMAND_ERROR_IS_FATAL ANY)
interrupted(INT "interrupted. Nothing is kept of a run" run many_people.json)
interrupted(INT "interrupted. Nothing is kept of changes" levers many_people.json)

file(SIZE ${WORK}/many_results/study.records first)
interrupted(TERM "goes on" study many.json)
file(SIZE ${WORK}/many_results/study.records second)
if(NOT second GREATER first)
  message(FATAL_ERROR "the records were not gone on with: ${first}, then ${second} bytes")
endif()
