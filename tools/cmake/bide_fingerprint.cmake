# bide_fingerprint(TARGET): gives TARGET the definitions of bide::study::fingerprint(), a hash over the engine's
# sources, the catalogue and the compiler, and of bide::study::build(); made again whenever one of them changes.
# Run as a script (-P) it writes that source.
if(CMAKE_SCRIPT_MODE_FILE)
  file(GLOB_RECURSE inputs ${ROOT}/engine/*.hpp ${ROOT}/engine/*.cpp ${ROOT}/scenarios/catalogue/*)
  list(FILTER inputs EXCLUDE REGEX "/engine/report/")
  set(hashes "${COMPILED_FOR}")
  foreach(input ${inputs})
    file(SHA256 ${input} hash)
    string(APPEND hashes " ${hash}")
  endforeach()
  string(SHA256 hash "${hashes}")
  file(WRITE "${OUTPUT}"
    "#include \"bide/study/records/fingerprint.hpp\"\n"
    "std::string_view bide::study::fingerprint() {\n"
    "  return \"${hash}\";\n"
    "}\n"
    "bide::study::Build bide::study::build() {\n"
    "  return {\"${VERSION}\", fingerprint(), \"${COMPILER}\", \"${INSTRUCTION_SET}\"};\n"
    "}\n")
  return()
endif()

set(bide_fingerprint_script ${CMAKE_CURRENT_LIST_FILE})
function(bide_fingerprint target)
  file(GLOB_RECURSE inputs CONFIGURE_DEPENDS ${PROJECT_SOURCE_DIR}/engine/*.hpp ${PROJECT_SOURCE_DIR}/engine/*.cpp
       ${PROJECT_SOURCE_DIR}/scenarios/catalogue/*)
  set(output ${CMAKE_CURRENT_BINARY_DIR}/fingerprint.cpp)
  set(compiler "${CMAKE_CXX_COMPILER_ID} ${CMAKE_CXX_COMPILER_VERSION}")
  set(instruction_set "${BIDE_ARCH}")
  if(NOT instruction_set)
    set(instruction_set "${CMAKE_SYSTEM_PROCESSOR} baseline")
  endif()
  set(compiled_for "${compiler} ${BIDE_ARCH} ${CMAKE_BUILD_TYPE}"
                   "${bide_vector_math_${BIDE_ARCH}}")
  add_custom_command(OUTPUT ${output}
    COMMAND ${CMAKE_COMMAND} -DROOT=${PROJECT_SOURCE_DIR} -DOUTPUT=${output} "-DCOMPILED_FOR=${compiled_for}"
            -DVERSION=${PROJECT_VERSION} "-DCOMPILER=${compiler}" "-DINSTRUCTION_SET=${instruction_set}"
            -P ${bide_fingerprint_script}
    DEPENDS ${inputs} ${bide_fingerprint_script}
    COMMENT "Hashing the engine's sources"
    VERBATIM)
  target_sources(${target} PRIVATE ${output})
endfunction()
