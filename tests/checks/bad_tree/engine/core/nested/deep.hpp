#pragma once
#include "march/high.hpp"
