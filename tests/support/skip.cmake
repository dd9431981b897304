# skip(WHY): leaves the script that asks, which then counts as skipped; under CI, where everything is there, it fails.
macro(skip why)
  if("$ENV{CI}" STREQUAL "true")
    message(FATAL_ERROR "cannot run under CI: ${why}")
  endif()
  message("skipped: ${why}")
  return()
endmacro()
