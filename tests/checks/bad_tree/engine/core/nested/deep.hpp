#pragma once
#include "bide/march/high.hpp"
