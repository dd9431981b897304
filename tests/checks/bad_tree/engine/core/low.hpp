#pragma once
#include <nlohmann/json.hpp>

#include "bide/march/high.hpp"
