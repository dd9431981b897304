# bide weather on files of climate models and stations that Debian's libncarg-data holds.   BIDE, WORK
include(${CMAKE_CURRENT_LIST_DIR}/python_with.cmake)
set(data /usr/share/ncarg/data)
if(NOT EXISTS ${data}/nug/tas_rectilinear_grid_2D.nc)
  message("skipped: libncarg-data is not installed")
  return()
endif()
python_with("xarray, netCDF4" python)
file(REMOVE_RECURSE ${WORK})
file(MAKE_DIRECTORY ${WORK})
execute_process(COMMAND ${python} -W ignore ${CMAKE_CURRENT_LIST_DIR}/weather_real.py ${BIDE} ${WORK} ${data}
                COMMAND_ERROR_IS_FATAL ANY)
