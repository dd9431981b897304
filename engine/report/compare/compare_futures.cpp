#include "bide/report/compare/compare_futures.hpp"

#include <fmt/format.h>

#include <cmath>

#include "bide/core/units.hpp"
#include "bide/report/words/words.hpp"

namespace bide::report {
namespace {

using study::Paired;

std::string signed_hours(double hours) {
  if (hours == 0) return "0 h";
  return (hours > 0 ? "+" : "-") + duration(std::abs(hours) * hour_s);
}

std::string of_all(const Paired& p, const study::Chance& share) {
  const double n = static_cast<double>(p.samples);
  return fmt::format("{} of {} futures ({:.0f} to {:.0f})", share.count, p.samples,
                     std::floor(share.interval.low * n), std::ceil(share.interval.high * n));
}

std::string between(double low, double high) {
  return fmt::format("({} to {})", signed_hours(low), signed_hours(high));
}

std::string differences(const Paired& p, double horizon_h) {
  std::string text;
  if (p.beyond > 0) text = "of the time within " + horizon(horizon_h * hour_s) + " ";
  text += "the median difference is " + signed_hours(p.median_difference);
  if (p.median_low && p.median_high && *p.median_low != *p.median_high)
    text += " " + between(*p.median_low, *p.median_high);
  const bool some_alike = p.same.count + p.indistinguishable.count > 0;
  if (some_alike && p.median_where_apart)
    text += ", where they differ " + signed_hours(*p.median_where_apart);
  return text + fmt::format(", the mean {} {}", signed_hours(p.mean_difference),
                            between(p.mean_interval.low, p.mean_interval.high));
}

std::string sentence(const char* what, const Paired& p, double horizon_h, const std::string& first,
                     const std::string& second) {
  const std::string within = horizon(horizon_h * hour_s);
  if (p.first_longer.count + p.second_longer.count == 0)
    return fmt::format(
        "{}, first person: no difference in any of {} futures ({} end at the same time, {} run beyond {} in "
        "both).",
        what, p.samples, p.same.count, p.indistinguishable.count, within);
  const bool second_more = p.second_longer.count >= p.first_longer.count;
  const study::Chance &more = second_more ? p.second_longer : p.first_longer,
                      &less = second_more ? p.first_longer : p.second_longer;
  std::string text = fmt::format("{}, first person: {} is longer in {}, {} in {}", what,
                                 second_more ? second : first, of_all(p, more), second_more ? first : second,
                                 less.count == 0 ? std::string("none") : fmt::format("{}", less.count));
  if (p.same.count > 0) text += fmt::format(", they end at the same time in {}", p.same.count);
  if (p.indistinguishable.count > 0)
    text += fmt::format(", in {} both run beyond {}", p.indistinguishable.count, within);
  return text + fmt::format("; {} (from {} to {}).", differences(p, horizon_h), first, second);
}

}  // namespace

std::vector<std::string> futures_sentences(const study::PairedFutures& paired, const std::string& first,
                                           const std::string& second) {
  std::vector<std::string> out{sentence("Able until", paired.able, paired.horizon_h, first, second),
                               sentence("Alive until", paired.alive, paired.horizon_h, first, second)};
  if (paired.without_result > 0)
    out.push_back(fmt::format("{} of {} futures have no result in one of them and are left out.",
                              paired.without_result, paired.drawn));
  return out;
}

}  // namespace bide::report
