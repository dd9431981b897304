#pragma once
#include <nlohmann/json.hpp>

#include "march/high.hpp"
