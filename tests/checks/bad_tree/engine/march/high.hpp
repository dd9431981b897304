#pragma once
#include "bide/constants/numbers.hpp"
#include "high.hpp"
