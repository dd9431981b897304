# bide_page_sources(OUTPUT): a rule that writes OUTPUT, a hash over all that bide.html is made of; the page carries it.
# bide_install_page(PAGE): installs the page, unless it was made of other sources than those that now stand here.
# Run as a script (-P) it writes the hash.
function(bide_page_hash root result)
  file(GLOB_RECURSE inputs RELATIVE ${root} ${root}/engine/* ${root}/tools/browser/* ${root}/scenarios/*.json
       ${root}/scenarios/lessons/*.md ${root}/scenarios/weather/*)
  set(hashes "")
  foreach(input ${inputs})
    file(SHA256 ${root}/${input} hash)
    string(APPEND hashes "${input} ${hash}\n")
  endforeach()
  string(SHA256 hash "${hashes}")
  set(${result} ${hash} PARENT_SCOPE)
endfunction()

if(CMAKE_SCRIPT_MODE_FILE STREQUAL CMAKE_CURRENT_LIST_FILE AND OUTPUT)
  bide_page_hash(${ROOT} hash)
  file(WRITE ${OUTPUT} ${hash})
  return()
endif()

set(bide_page_sources_script ${CMAKE_CURRENT_LIST_FILE})
function(bide_page_sources output)
  file(GLOB_RECURSE inputs CONFIGURE_DEPENDS ${PROJECT_SOURCE_DIR}/engine/* ${PROJECT_SOURCE_DIR}/tools/browser/*
       ${PROJECT_SOURCE_DIR}/scenarios/*.json ${PROJECT_SOURCE_DIR}/scenarios/lessons/*.md
       ${PROJECT_SOURCE_DIR}/scenarios/weather/*)
  add_custom_command(OUTPUT ${output}
    COMMAND ${CMAKE_COMMAND} -DROOT=${PROJECT_SOURCE_DIR} -DOUTPUT=${output} -P ${bide_page_sources_script}
    DEPENDS ${inputs} ${bide_page_sources_script}
    VERBATIM COMMENT "Hashing what the page is made of")
endfunction()

# What an installation runs. Asked for by itself, or packed, a stale page is an error; beside the rest it is left out.
function(bide_put_page root built folder)
  if(NOT EXISTS ${built})
    return()
  endif()
  bide_page_hash(${root} now)
  file(STRINGS ${built} made_of REGEX "<meta name=\"sources\" content=\"${now}\">")
  if(made_of)
    file(INSTALL DESTINATION ${folder} TYPE FILE FILES ${built})
  elseif(CMAKE_INSTALL_COMPONENT STREQUAL "page")
    message(FATAL_ERROR "${built} was made of other sources: run tools/page first")
  else()
    message(WARNING "${built} was made of other sources and is left out: run tools/page")
  endif()
endfunction()

function(bide_install_page page)
  install(CODE "
    include(${bide_page_sources_script})
    bide_put_page(\"${PROJECT_SOURCE_DIR}\" \"${page}\" \"\${CMAKE_INSTALL_PREFIX}/${CMAKE_INSTALL_DATADIR}/bide\")" COMPONENT page)
endfunction()
