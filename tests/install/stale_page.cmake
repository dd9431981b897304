# A page is installed while it was made of the sources that stand there, and not after one of them was edited.
cmake_policy(VERSION 3.25)
set(sources ${WORK}/sources)
set(page ${WORK}/bide.html)
file(REMOVE_RECURSE ${WORK})
file(WRITE ${sources}/engine/a.cpp "int a;\n")
execute_process(COMMAND ${CMAKE_COMMAND} -DROOT=${sources} -DOUTPUT=${WORK}/hash -P ${SCRIPT} COMMAND_ERROR_IS_FATAL ANY)
file(READ ${WORK}/hash hash)
file(WRITE ${page} "<!doctype html>\n<meta name=\"sources\" content=\"${hash}\">\n")

# put(COMPONENT FOLDER RESULT): installs as cmake --install does
function(put component folder result)
  file(WRITE ${WORK}/put.cmake "
    include(${SCRIPT})
    set(CMAKE_INSTALL_COMPONENT \"${component}\")
    bide_put_page(${sources} ${page} ${WORK}/${folder})")
  execute_process(COMMAND ${CMAKE_COMMAND} -P ${WORK}/put.cmake RESULT_VARIABLE code ERROR_VARIABLE said OUTPUT_QUIET)
  string(REGEX REPLACE "[ \n]+" " " said "${code} ${said}")  # cmake breaks its lines
  set(${result} "${said}" PARENT_SCOPE)
endfunction()

put("" fresh said)
if(NOT EXISTS ${WORK}/fresh/bide.html)
  message(FATAL_ERROR "a page of these sources is not installed: ${said}")
endif()
file(APPEND ${sources}/engine/a.cpp "int b;\n")
put("" beside said)
if(EXISTS ${WORK}/beside/bide.html OR NOT said MATCHES "^0 .*made of other sources")
  message(FATAL_ERROR "a stale page is installed, or nothing is said: ${said}")
endif()
put(page alone said)
if(EXISTS ${WORK}/alone/bide.html OR NOT said MATCHES "^1 .*run tools/page")
  message(FATAL_ERROR "a stale page asked for by itself is no error: ${said}")
endif()
