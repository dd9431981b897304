// Faults of a file for users of the library.
#pragma once
#include "core/low.hpp"
#include "bide/march/high.hpp"
#include "bide/study/taken.hpp"
