# bide::cvode: SUNDIALS' CVODE on the slopes of a system (tests/support/cvode.hpp), for what compares with it.
# Optional; the engine never needs it.
find_package(SUNDIALS 6.4 QUIET COMPONENTS cvode nvecserial sunmatrixdense sunlinsoldense sunlinsolspgmr)
if(SUNDIALS_FOUND)
  add_library(bide_cvode INTERFACE)
  add_library(bide::cvode ALIAS bide_cvode)
  target_include_directories(bide_cvode INTERFACE ${PROJECT_SOURCE_DIR}/tests)
  target_link_libraries(bide_cvode INTERFACE bide::timeline SUNDIALS::cvode SUNDIALS::nvecserial
    SUNDIALS::sunmatrixdense SUNDIALS::sunlinsoldense SUNDIALS::sunlinsolspgmr)
else()
  message(STATUS "SUNDIALS not found (Debian: libsundials-dev): bench_cvode is not built, test cvode is skipped")
endif()
