// The tests that hold the fluxes, with the system they test, in one translation unit: a change to any header
// of the model costs one compilation.
#include "bide/system/system_double.cpp"

#include "bide/timeline/balance.cpp"

#include "body/shivering_test.cpp"

#include "system/surfaces_test.cpp"

#include "system/cabin_test.cpp"

#include "system/fluxes_test.cpp"

#include "timeline/closure_test.cpp"

#include "system/person_test.cpp"

#include "system/labour_test.cpp"
#include "system/solve_test.cpp"

#include "system/pace_test.cpp"
#include "system/tasks_test.cpp"
