# A study's NetCDF file opens in xarray with its units, and holds what its CSV holds.   BIDE, WORK, STUDY
include(${CMAKE_CURRENT_LIST_DIR}/python_with.cmake)
python_with("xarray, netCDF4" python)
file(REMOVE_RECURSE ${WORK})
file(MAKE_DIRECTORY ${WORK})
execute_process(COMMAND ${BIDE} study ${STUDY} --out made --csv --netcdf WORKING_DIRECTORY ${WORK}
                COMMAND_ERROR_IS_FATAL ANY OUTPUT_QUIET)
execute_process(COMMAND ${BIDE} --version OUTPUT_VARIABLE version COMMAND_ERROR_IS_FATAL ANY)
string(REGEX MATCH "bide ([^\n]+)\nmodel ([0-9a-f]+)" all "${version}")
execute_process(COMMAND ${python} -W ignore ${CMAKE_CURRENT_LIST_DIR}/study_xarray.py made/results.nc made/results.csv
                        ${CMAKE_MATCH_1} ${CMAKE_MATCH_2}
                WORKING_DIRECTORY ${WORK} COMMAND_ERROR_IS_FATAL ANY)
