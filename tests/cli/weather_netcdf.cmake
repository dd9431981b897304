# bide weather on NetCDF files made by xarray, and on damaged ones.   BIDE, WORK
include(${CMAKE_CURRENT_LIST_DIR}/python_with.cmake)
python_with("xarray, netCDF4" python)
file(REMOVE_RECURSE ${WORK})
file(MAKE_DIRECTORY ${WORK})
execute_process(COMMAND ${python} -W ignore ${CMAKE_CURRENT_LIST_DIR}/weather_netcdf.py ${BIDE} ${WORK}
                COMMAND_ERROR_IS_FATAL ANY)
