#include "packing.hpp"

#include <cmath>

#include "refused.hpp"

namespace bide::tool::cf {
namespace {

constexpr double none = std::numeric_limits<double>::quiet_NaN();

// One number, or `usual` without the attribute.
double number(const File& file, const Head& variable, const char* attribute, double usual) {
  const std::vector<double> found = file.numbers(variable, attribute);
  if (found.empty()) {
    if (const auto text = file.text(&variable, attribute))
      refuse("{}:{}: found \"{}\"; allowed a number", variable.name, attribute, *text);
    return usual;
  }
  if (found.size() != 1 || !std::isfinite(found.front()))
    refuse("{}:{}: found {}; allowed one finite number", variable.name, attribute,
           found.size() == 1 ? fmt::format("{}", found.front()) : fmt::format("{} numbers", found.size()));
  return found.front();
}

}  // namespace

Packing read_packing(const File& file, const Head& variable) {
  Packing out;
  out.single = variable.type == Head::Type::single;
  out.scale = number(file, variable, "scale_factor", 1);
  out.offset = number(file, variable, "add_offset", 0);
  if (out.scale == 0) refuse("{}:scale_factor: found 0; allowed any other number", variable.name);
  if (const auto sign = file.text(&variable, "_Unsigned"); sign && *sign != "false")
    refuse("{}:_Unsigned: found \"{}\"; allowed \"false\", or none", variable.name, *sign);
  out.missing = file.numbers(variable, "_FillValue");
  if (out.missing.empty() && variable.default_fill) out.missing.push_back(*variable.default_fill);
  for (const double each : file.numbers(variable, "missing_value")) out.missing.push_back(each);
  for (const char* attribute : {"valid_range", "valid_min", "valid_max"}) {
    const std::vector<double> limits = file.numbers(variable, attribute);
    if (limits.empty()) continue;
    const std::string_view name = attribute;
    const bool both = name == "valid_range";
    if (limits.size() != (both ? 2 : 1))
      refuse("{}:{}: found {} numbers; allowed {}", variable.name, name, limits.size(), both ? 2 : 1);
    if (name != "valid_max") out.lowest = limits.front();
    if (name != "valid_min") out.highest = limits.back();
    out.range_of_values = variable.type == Head::Type::whole && file.is_real(variable, attribute);
  }
  return out;
}

double unpack(const Packing& packing, double stored) {
  if (std::isnan(stored)) return none;
  for (const double missing : packing.missing)
    if (stored == missing || (packing.single && static_cast<float>(stored) == static_cast<float>(missing)))
      return none;
  const double value = stored * packing.scale + packing.offset;
  const double limited = packing.range_of_values ? value : stored;
  return limited >= packing.lowest && limited <= packing.highest ? value : none;
}

}  // namespace bide::tool::cf
