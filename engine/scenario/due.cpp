#include "bide/scenario/due.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <chrono>
#include <cmath>
#include <iterator>

#include "bide/constants/boarding.hpp"
#include "bide/constants/readiness.hpp"
#include "bide/constants/signals.hpp"
#include "bide/core/time_utc.hpp"
#include "bide/core/units.hpp"
#include "bide/scenario/rules.hpp"

namespace bide::scenario {
namespace {

namespace c = constants;
constexpr double month_s = 365.25 / 12 * day_s;  // mean
constexpr std::size_t date_letters = 10;

// The same day so many months later, or the last of a shorter month; part of a month as part of a mean one.
double months_later(double unix_s, double months) {
  using namespace std::chrono;
  const sys_days day{days{static_cast<int>(unix_s / day_s)}};
  const double whole = std::floor(months);
  const year_month_day then = year_month_day{day} + std::chrono::months{static_cast<int>(whole)};
  const sys_days at = then.ok() ? sys_days{then} : sys_days{then.year() / then.month() / last};
  return static_cast<double>(at.time_since_epoch().count()) * day_s + (months - whole) * month_s;
}

std::string day_words(double unix_s) {
  return format_time_utc(unix_s).substr(0, date_letters);
}

struct List {
  const Scenario& scenario;
  double start_s;
  std::vector<Due> out = {};

  // @param then what being past it means
  void dated(const char* what, const std::optional<std::string>& date, const std::string& then,
             const std::string& not_stated) {
    if (!date) return out.push_back({Due::State::unknown, what, "date not stated; " + not_stated});
    const bool past = is_past(date, start_s);
    out.push_back(
        {past ? Due::State::due : Due::State::in_order, what,
         past ? fmt::format("past its date, {}: {}", *date, then) : fmt::format("in date until {}", *date)});
  }
  void service() {
    const Readiness& r = *scenario.readiness;
    const auto overdue = months_overdue(r, start_s);
    if (!overdue)
      return out.push_back(
          {Due::State::unknown, "service of the raft", "last service not stated; nothing can be said of it"});
    const double due_s = months_later(*date_unix_s(*r.raft_serviced), r.service_interval_months);
    out.push_back({*overdue > 0 ? Due::State::due : Due::State::in_order, "service of the raft",
                   *overdue > 0 ? fmt::format("due on {}, {:.0f} months before the start", day_words(due_s),
                                              std::ceil(*overdue))
                                : fmt::format("next due on {}", day_words(due_s))});
  }
  void age() {
    const auto& made = scenario.readiness->raft_made;
    if (!made) return;
    const double months = (start_s - *date_unix_s(*made)) / month_s;
    constexpr double year_months = 12;
    out.push_back(
        {months < c::gas_test_months ? Due::State::in_order : Due::State::unknown, "tests of the raft",
         fmt::format(
             "made {:.0f} years before the start; gas inflation test every {:.0f} years, after {:.0f} "
             "years an extra-pressure test every year; when they were done is not stated",
             months / year_months, c::gas_test_months / year_months,
             c::pressure_test_after_months / year_months)});
  }
  void stowed(const char* what, const std::optional<bool>& is_so, const std::string& effect) {
    if (!is_so)
      out.push_back({Due::State::unknown, what, "not looked at; if it is not so, " + effect});
    else
      out.push_back(
          {*is_so ? Due::State::in_order : Due::State::due, what, *is_so ? "so" : "not so: " + effect});
  }
};

}  // namespace

std::optional<double> date_unix_s(const std::string& date) {
  if (date.size() != date_letters) return std::nullopt;
  return parse_time_utc(date + "T00:00Z");
}

bool is_past(const std::optional<std::string>& date, double time_s) {
  const auto day = date ? date_unix_s(*date) : std::nullopt;
  return day && time_s >= *day + day_s;
}

std::optional<double> months_overdue(const Readiness& r, double time_s) {
  const auto serviced = r.raft_serviced ? date_unix_s(*r.raft_serviced) : std::nullopt;
  if (!serviced) return std::nullopt;
  // In date to the end of the day on which it is due.
  return (time_s - months_later(*serviced, r.service_interval_months) - day_s) / month_s;
}

double neglected_chance(double months_overdue) {
  const double part = std::clamp(months_overdue / c::neglected_for_sure_months, 0.0, 1.0);
  return c::neglected_in_date + (1 - c::neglected_in_date) * part;
}

std::optional<double> signals_that_fail(const Scenario& s) {
  if (!s.readiness || !s.readiness->signals_expire) return std::nullopt;
  return is_past(s.readiness->signals_expire, start_of(s).value_or(0)) ? c::signals_fail_expired
                                                                       : c::signals_fail_in_date;
}

int signals_working(int count, double fails, double position) {
  double chance = std::pow(fails, count), below = chance;  // of none, then of one more each time
  int working = 0;
  for (; working < count && below < position; ++working) {
    chance *= (1 - fails) / fails * (count - working) / (working + 1);
    below += chance;
  }
  return working;
}

std::vector<Due> readiness_list(const ValidScenario& valid) {
  const Scenario& s = valid.scenario;
  if (!s.readiness) return {};
  const Readiness& r = *s.readiness;
  List list{s, valid.start_unix_s};
  const auto months = [](double value) { return fmt::format("{:.0f} months", value); };
  list.service();
  list.age();
  list.dated("hydrostatic release", r.release_unit_expires,
             fmt::format("it may let go {:.1f} m deep instead of {:.1f} m", c::release_deepest_worn_m.value,
                         c::release_depth_m.high),
             "a disposable one lasts " + months(c::release_lasts_months) + " (recalled)");
  list.dated(
      "pyrotechnics", r.signals_expire,
      fmt::format("{:.0f} % of such failed when tried ({:.0f} to {:.0f})", pct * c::signals_fail_expired,
                  pct * c::signals_fail_expired.low, pct * c::signals_fail_expired.high),
      fmt::format("they last {:.0f} to {}; all are taken to work, except in a neglected raft, in odds",
                  c::signals_last_months.low, months(c::signals_last_months.high)));
  list.dated("water and food of the pack", r.pack_expires, "counted as absent",
             "they last " + months(c::pack_lasts_months) +
                 "; taken to be in date, except in a neglected raft, in odds");
  list.dated("medicines", r.medicines_expire, "counted as absent", "taken to be in date");
  list.stowed("container raised off the deck, drains clear", r.raised_with_clear_drains,
              "it stands in water and decays; how fast is not known");
  list.stowed("valise dry, nothing on top of it", r.dry_with_nothing_on_top,
              "it decays, and takes longer to free; neither is known in numbers");
  list.stowed("painter fast to a strong point by the weak link", r.painter_by_weak_link,
              "a raft that floats free is pulled under or drifts off");
  list.stowed("no lashings but the release strap", r.no_extra_lashings,
              "a raft cannot float free; by hand it takes longer, by how much is not known");
  std::stable_sort(list.out.begin(), list.out.end(),
                   [](const Due& a, const Due& b) { return a.state < b.state; });
  return std::move(list.out);
}

}  // namespace bide::scenario
