# No command writes over what it reads, under whatever name, nor two outputs to one file.
# BIDE, WORK, MINIMAL, UNCERTAIN, STUDY, HELD_BACK
file(REMOVE_RECURSE ${WORK})
file(MAKE_DIRECTORY ${WORK}/folder ${WORK}/study)
file(COPY_FILE ${MINIMAL} ${WORK}/s.json)
file(COPY_FILE ${UNCERTAIN} ${WORK}/u.json)
file(CREATE_LINK ${WORK}/u.json ${WORK}/hard.json)
file(CREATE_LINK u.json ${WORK}/soft.json SYMBOLIC)

# A scenario with a weather file.
file(COPY ${HELD_BACK}/gale.json ${HELD_BACK}/gale.csv DESTINATION ${WORK})

# A scenario with the name of a chart of its page.
execute_process(COMMAND ${BIDE} levers s.json --charts charts WORKING_DIRECTORY ${WORK} OUTPUT_QUIET
                COMMAND_ERROR_IS_FATAL ANY)
file(GLOB charts ${WORK}/charts/*.svg)
list(GET charts 0 chart)
file(COPY_FILE ${MINIMAL} ${chart})

# The records of a study, and what `weather` reads.
execute_process(COMMAND ${BIDE} study ${STUDY} --out parts --quiet WORKING_DIRECTORY ${WORK} OUTPUT_QUIET
                COMMAND_ERROR_IS_FATAL ANY)
file(COPY_FILE ${MINIMAL} ${WORK}/air.nc)

file(GLOB files ${WORK}/*.json ${WORK}/gale.csv ${WORK}/air.nc ${WORK}/charts/* ${WORK}/parts/*)
list(FILTER files EXCLUDE REGEX "/inputs$")  # the folder of copies: no output can have its name
foreach(file ${files})
  file(SHA256 ${file} hash)
  list(APPEND before ${hash})
endforeach()

# refuses(WORDS arguments...): exit code 1, these words, and nothing is changed.
set(wrong)
function(refuses words)
  execute_process(COMMAND ${BIDE} ${ARGN} WORKING_DIRECTORY ${WORK} RESULT_VARIABLE code OUTPUT_VARIABLE out
                  ERROR_VARIABLE err TIMEOUT 120)
  if(NOT code EQUAL 1 OR NOT out STREQUAL "" OR NOT err MATCHES "${words}")
    string(APPEND wrong "${ARGN}: exit code ${code}, output \"${out}\", error \"${err}\"\n")
  endif()
  set(after)
  foreach(file ${files})
    file(SHA256 ${file} hash)
    list(APPEND after ${hash})
  endforeach()
  if(NOT after STREQUAL before)
    message(FATAL_ERROR "${ARGN}: has changed an input\n${wrong}")
  endif()
  set(wrong "${wrong}" PARENT_SCOPE)
endfunction()

set(input "would overwrite what is read")
set(twice "named for two outputs")
refuses("${input}" run s.json --json s.json)
refuses("${input}" run s.json --report folder/../s.json)
refuses("${input}" run gale.json --json gale.csv)
refuses("${input}" odds gale.json --csv gale.csv)
refuses("${twice}" run s.json --json new.json --report folder/../new.json)
refuses("${input}" odds u.json -n 4 --json u.json)
refuses("${input}" odds u.json -n 4 --csv hard.json)
refuses("${input}" odds u.json -n 4 --report soft.json)
refuses("${input}" odds u.json --dump 1 -o u.json --force)
refuses("${input}" run s.json --xlsx s.json)
refuses("${twice}" run s.json --timeline new.csv --plain --json new.csv.notice.txt)
refuses("${twice}" odds u.json -n 4 --json new.json --csv new.json)
refuses("${input}" compare s.json u.json --report u.json)
refuses("${input}" levers s.json --report s.json)
refuses("${input}" levers s.json --json s.json)
refuses("${input}" levers ${chart} --charts charts)
refuses("${input}" choose gale.json --rafts offshore_4 --help-after 1h --csv gale.csv)
refuses("${input}" provision u.json --until 1h -o hard.json --force)
refuses("${input}" provision gale.json --until 1h --json gale.csv)
refuses("${twice}" provision u.json --until 1h -o new.json --json folder/../new.json)
refuses("${input}" merge parts/study.records --out parts)
set(hours --place 58,-12 --from 2031-02-03T00:00Z --to 2031-02-03T03:00Z)
refuses("${input}" weather air.nc ${hours} -o folder/../air.nc --force)
refuses("${input}" weather air.nc gale.csv ${hours} -o gale.csv --force)
refuses("${twice}" choose s.json --rafts offshore_4 --help-after 6h --csv new.csv --plain --report new.csv.notice.txt)

# A study whose file has the name of one of its results; its scenario stands beside it.
file(READ ${STUDY} study)
string(JSON name GET "${study}" scenario)
get_filename_component(folder ${STUDY} DIRECTORY)
file(COPY_FILE ${folder}/${name} ${WORK}/study/summary.txt)
string(JSON study SET "${study}" scenario "\"summary.txt\"")
file(WRITE ${WORK}/study/t.json "${study}")
refuses("${input}" study study/t.json --out study)

# Devices are no files: the same one twice is no clash.
execute_process(COMMAND ${BIDE} run s.json --json /dev/null --timeline /dev/null WORKING_DIRECTORY ${WORK}
                RESULT_VARIABLE code OUTPUT_QUIET ERROR_VARIABLE err)
if(NOT code EQUAL 0)
  string(APPEND wrong "run to /dev/null twice: exit code ${code}, \"${err}\"\n")
endif()

# A link planted where a study once wrote its tables is not followed.
file(WRITE ${WORK}/victim "untouched")
file(MAKE_DIRECTORY ${WORK}/results)
foreach(name results.csv.part results.nc.part summary.txt.part summary.json.part)
  file(CREATE_LINK ${WORK}/victim ${WORK}/results/${name} SYMBOLIC)
endforeach()
execute_process(COMMAND ${BIDE} study ${STUDY} --out results --csv --netcdf --quiet WORKING_DIRECTORY ${WORK}
                RESULT_VARIABLE code ERROR_VARIABLE err)
file(READ ${WORK}/victim victim)
if(NOT victim STREQUAL "untouched" OR NOT EXISTS ${WORK}/results/results.csv)
  string(APPEND wrong "study with planted links: exit code ${code}, \"${err}\", the file linked to holds \"${victim}\"\n")
endif()
if(wrong)
  message(FATAL_ERROR "${wrong}")
endif()
