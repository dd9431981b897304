# bide_embed(TARGET NAMESPACE FILES...): each file becomes a `const std::string_view NAMESPACE::stem` in TARGET.
# A file named *.bin is taken as bytes.
# Run as a script (-P) it writes one such source.
if(CMAKE_SCRIPT_MODE_FILE)
  if(INPUT MATCHES "\\.bin$")
    file(READ "${INPUT}" content HEX)
    string(LENGTH "${content}" digits)
    math(EXPR bytes "${digits} / 2")
    string(REGEX REPLACE "(................................................................)" "\\1\"\n\"" content "${content}")
    string(REGEX REPLACE "([0-9a-f][0-9a-f])" "\\\\x\\1" content "${content}")
    file(WRITE "${OUTPUT}"
      "#include <string_view>\n"
      "#pragma GCC diagnostic ignored \"-Woverlength-strings\"\n"
      "namespace ${NAMESPACE} {\n"
      "extern const std::string_view ${STEM};\n"
      "const std::string_view ${STEM}(\"${content}\", ${bytes});\n"
      "}\n")
    return()
  endif()
  file(READ "${INPUT}" content)
  set(delimiter "bide_embed")
  string(FIND "${content}" ")${delimiter}\"" clash)
  if(NOT clash EQUAL -1)
    message(FATAL_ERROR "${INPUT} holds the raw string delimiter")
  endif()
  file(WRITE "${OUTPUT}"
    "#include <string_view>\n"
    "namespace ${NAMESPACE} {\n"
    "extern const std::string_view ${STEM};\n"
    "const std::string_view ${STEM} = R\"${delimiter}(${content})${delimiter}\";\n"
    "}\n")
  return()
endif()

set(bide_embed_script ${CMAKE_CURRENT_LIST_FILE})
function(bide_embed target namespace)
  foreach(input ${ARGN})
    get_filename_component(stem ${input} NAME_WE)
    set(output ${CMAKE_CURRENT_BINARY_DIR}/embedded/${stem}.cpp)
    add_custom_command(OUTPUT ${output}
      COMMAND ${CMAKE_COMMAND} -DINPUT=${input} -DOUTPUT=${output} -DNAMESPACE=${namespace} -DSTEM=${stem}
              -P ${bide_embed_script}
      DEPENDS ${input} ${bide_embed_script}
      COMMENT "Embedding ${stem}")
    target_sources(${target} PRIVATE ${output})
  endforeach()
endfunction()
