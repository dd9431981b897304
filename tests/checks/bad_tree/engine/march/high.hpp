#pragma once
#include "bide/constants/numbers.hpp"
#include "high.hpp"
#include "bide/bide.hpp"
