# A study's NetCDF file opens in xarray with its units, and holds what its CSV holds.   BIDE, WORK, STUDY
foreach(candidate /usr/bin/python3 python3)
  execute_process(COMMAND ${candidate} -c "import xarray, netCDF4" RESULT_VARIABLE result OUTPUT_QUIET ERROR_QUIET)
  if(result EQUAL 0)
    set(python ${candidate})
    break()
  endif()
endforeach()
if(NOT python)
  message("skipped: no python3 here has xarray and netCDF4")
  return()
endif()
file(REMOVE_RECURSE ${WORK})
file(MAKE_DIRECTORY ${WORK})
execute_process(COMMAND ${BIDE} study ${STUDY} --out made --csv --netcdf WORKING_DIRECTORY ${WORK}
                COMMAND_ERROR_IS_FATAL ANY OUTPUT_QUIET)
execute_process(COMMAND ${python} -W ignore ${CMAKE_CURRENT_LIST_DIR}/study_xarray.py made/results.nc made/results.csv
                WORKING_DIRECTORY ${WORK} COMMAND_ERROR_IS_FATAL ANY)
