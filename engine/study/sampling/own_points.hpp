// Numbers of a user's own points, checked.
#pragma once

#include <optional>
#include <string>

#include "bide/study/sampling/sampler.hpp"

namespace bide::study {

// Checks one number. A place of 0 or 1 is moved inside by 2^-53, as the ends of a normal distribution are
// infinite; the ends of one with bounds are met to the last digits.
// @param number changed where it is 0 or 1 and a place
// @param factor that it is for
// @param scale  of the points
// @return what was found and what is allowed; empty when nothing is wrong
std::optional<std::string> settle_number(double& number, const Factor& factor, scenario::PointScale scale);

}  // namespace bide::study
