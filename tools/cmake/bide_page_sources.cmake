# bide_page_sources(OUTPUT): a rule that writes OUTPUT, a hash over all that bide.html is made of; the page carries it.
# bide_install_page(): installs the page, unless it was made of other sources than those that now stand here.
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

# Asked for by itself, or packed, a stale page is an error; beside the rest of an installation it is left out.
function(bide_install_page page)
  install(CODE "
    include(${bide_page_sources_script})
    if(EXISTS ${page})
      bide_page_hash(${PROJECT_SOURCE_DIR} now)
      file(STRINGS ${page} made_of REGEX \"<meta name=\\\"sources\\\" content=\\\"\${now}\\\">\")
      if(made_of)
        file(INSTALL DESTINATION \"\${CMAKE_INSTALL_PREFIX}/${CMAKE_INSTALL_DATADIR}/bide\" TYPE FILE FILES ${page})
      elseif(CMAKE_INSTALL_COMPONENT STREQUAL page)
        message(FATAL_ERROR \"${page} was made of other sources: run tools/page first\")
      else()
        message(WARNING \"${page} was made of other sources and is left out: run tools/page\")
      endif()
    endif()" COMPONENT page)
endfunction()
