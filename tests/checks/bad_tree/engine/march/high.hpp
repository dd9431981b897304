#pragma once
#include "constants/numbers.hpp"
#include "high.hpp"
