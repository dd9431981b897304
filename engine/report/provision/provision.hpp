// The least kit that meets a target, as JSON.
#pragma once

#include <string>

#include "bide/study/questions/provision.hpp"

namespace bide::report {

inline constexpr const char* provision_format = "bide provision 1";

std::string provision_json(const study::Provision& provision);
std::string provision_schema();

}  // namespace bide::report
