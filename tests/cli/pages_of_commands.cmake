# Every command's page carries the notice, names its parts, promises nothing and fetches nothing.
file(REMOVE_RECURSE ${WORK})
file(MAKE_DIRECTORY ${WORK})
function(page name parts)
  execute_process(COMMAND ${BIDE} ${ARGN} OUTPUT_QUIET ERROR_VARIABLE err RESULT_VARIABLE code)
  if(NOT code EQUAL 0)
    message(FATAL_ERROR "${name}: exit ${code}: ${err}")
  endif()
  file(READ ${WORK}/${name} text)
  foreach(part "Never a reason to end, delay or narrow a search" "Sea water and urine are not drinking water" ${parts})
    string(FIND "${text}" "${part}" at)
    if(at LESS 0)
      message(FATAL_ERROR "${name}: not in the page: ${part}")
    endif()
  endforeach()
  string(REGEX REPLACE "<(style|script)[^>]*>[^<]*</(style|script)>" "" words "${text}")
  string(REGEX REPLACE "unsafe-inline" "" words "${words}")
  string(REGEX MATCH "[^a-z](safe|surviv|guarantee)" promise "${words}")
  if(promise)
    message(FATAL_ERROR "${name}: says \"${promise}\"")
  endif()
endfunction()

page(odds.html "The window;Against time;What ends it;Help, as the scenario states it" odds ${UNCERTAIN} -n 16
     --report ${WORK}/odds.html)
page(levers.html "Buys most;What would buy more time;Where the changes come from" levers ${MINIMAL}
     --report ${WORK}/levers.html)
page(compare.html "Each with its own stores;What is compared;What sets them apart;Where does the warmth go?" compare ${MINIMAL}
     --vary /raft/capacity_persons=4,8 --report ${WORK}/compare.html)
page(results/summary.html "What may happen;What it depends on;What was run" study ${STUDY} --out ${WORK}/results
     --report --quiet)
