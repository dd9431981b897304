# Pages for a browser: their sources, their style, and the drawing script, which npm fetches and esbuild bundles when
# the program is built. Nothing of it is needed where the program runs.
option(BIDE_CHARTS "Pages draw their charts (building needs node and npm); without, they show tables" ON)

set(web ${CMAKE_CURRENT_BINARY_DIR}/charts)
set(bundled ${web}/out/charts_script.txt ${web}/out/charts_hash.txt)

if(BIDE_CHARTS)
  find_program(BIDE_NODE NAMES node nodejs)
  find_program(BIDE_NPM npm)
  mark_as_advanced(BIDE_NODE BIDE_NPM)
  if(NOT BIDE_NODE OR NOT BIDE_NPM)
    message(FATAL_ERROR "Charts are built with node (18 or newer) and npm, which are not here. Install both, or "
                        "configure with -DBIDE_CHARTS=OFF for pages that show tables in place of charts.")
  endif()
  set(web_sources package.json package-lock.json charts.js bundle.mjs)
  list(TRANSFORM web_sources PREPEND ${CMAKE_CURRENT_LIST_DIR}/charts/)
  file(GLOB locks ${CMAKE_CURRENT_LIST_DIR}/charts/package*.json)
  add_custom_command(OUTPUT ${web}/node_modules/.package-lock.json
    COMMAND ${CMAKE_COMMAND} -E make_directory ${web}
    COMMAND ${CMAKE_COMMAND} -E copy ${locks} ${web}
    COMMAND ${CMAKE_COMMAND} -E chdir ${web} ${BIDE_NPM} ci --ignore-scripts --no-audit --no-fund --prefer-offline
            --loglevel=error
    DEPENDS ${locks} VERBATIM COMMENT "Fetching what draws charts")
  add_custom_command(OUTPUT ${bundled}
    COMMAND ${CMAKE_COMMAND} -E copy ${web_sources} ${web}
    COMMAND ${BIDE_NODE} ${web}/bundle.mjs ${web}/out
    DEPENDS ${web_sources} ${web}/node_modules/.package-lock.json VERBATIM COMMENT "Bundling what draws charts")
else()
  set(bundled ${web}/none/charts_script.txt ${web}/none/charts_hash.txt)
  foreach(file ${bundled})
    file(WRITE ${file} "")
  endforeach()
endif()
bide_embed(bide_report bide::report::html::embedded ${CMAKE_CURRENT_LIST_DIR}/style.css ${bundled})
# clang counts the letters of a literal; every compiler in use takes this one.
set_source_files_properties(${CMAKE_CURRENT_BINARY_DIR}/embedded/charts_script.cpp PROPERTIES COMPILE_OPTIONS
                            -Wno-overlength-strings)
