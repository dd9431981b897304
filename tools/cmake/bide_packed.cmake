# bide_packed(RESULT FILE NAME): a rule that packs FILE as NAME.gz, as Debian's policy asks of manuals and changelogs; its
# path in RESULT. Without gzip RESULT is the FILE as it is.
find_program(BIDE_GZIP gzip)
mark_as_advanced(BIDE_GZIP)
function(bide_packed result file name)
  if(NOT BIDE_GZIP)
    set(${result} ${file} PARENT_SCOPE)
    return()
  endif()
  set(packed ${PROJECT_BINARY_DIR}/packed/${name}.gz)
  file(MAKE_DIRECTORY ${PROJECT_BINARY_DIR}/packed)
  add_custom_command(OUTPUT ${packed} COMMAND ${BIDE_GZIP} -9nc ${file} > ${packed} DEPENDS ${file} VERBATIM)
  set(${result} ${packed} PARENT_SCOPE)
endfunction()
