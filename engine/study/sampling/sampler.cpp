#include "bide/study/sampling/sampler.hpp"

#include <fmt/format.h>

#include <Eigen/Cholesky>
#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <stdexcept>

#include "bide/constants/boarding.hpp"
#include "bide/constants/growth.hpp"
#include "bide/constants/people.hpp"
#include "bide/constants/readiness.hpp"
#include "bide/constants/swimming.hpp"
#include "bide/core/random.hpp"
#include "bide/core/time_utc.hpp"
#include "bide/core/units.hpp"
#include "bide/scenario/due.hpp"
#include "bide/scenario/other_raft.hpp"
#include "bide/scenario/patch.hpp"
#include "bide/scenario/priors.hpp"
#include "bide/scenario/raft_in_tree.hpp"
#include "bide/scenario/resolve.hpp"
#include "bide/scenario/rules.hpp"
#include "bide/scenario/words.hpp"
#include "bide/scenario/write.hpp"
#include "bide/study/sampling/distribution.hpp"

namespace bide::study {

namespace k = constants;
using scenario::Person;
using scenario::Sex;
using scenario::UnknownPart;
using scenario::Value;

namespace {

// Epistemic: coefficients and choices that nobody has measured. People, weather, stores and failures are
// aleatory.
FactorKind kind_of(std::string_view pointer) {
  const auto in = [&](std::string_view start) { return pointer.rfind(start, 0) == 0; };
  const bool unmeasured =
      in("/raft/canopy_heat_loss_position") || in("/raft/leakage_position") || in("/model") || in("/limits");
  return unmeasured ? FactorKind::epistemic : FactorKind::aleatory;
}

bool of_numbers(const scenario::Distribution& distribution) {
  return std::all_of(distribution.values.begin(), distribution.values.end(),
                     [](const Value& each) { return std::holds_alternative<double>(each); });
}

bool has_value(const scenario::Uncertain& uncertain, const std::string& name) {
  for (const auto& [pointer, distribution] : uncertain.inputs.entries)
    if (pointer == name) return of_numbers(distribution);
  for (const scenario::SharedInput& group : uncertain.groups)
    if (group.name == name) return of_numbers(group.distribution);
  return false;
}

bool contains(const std::vector<UnknownPart>& parts, UnknownPart part) {
  return parts.empty() || std::find(parts.begin(), parts.end(), part) != parts.end();
}

// The latest value of a field: drawn, or else as written.
template <class T>
T now_at(const std::vector<Setting>& settings, const std::string& pointer, T written) {
  for (auto each = settings.rbegin(); each != settings.rend(); ++each)
    if (const T* set = each->pointer == pointer ? std::get_if<T>(&each->value) : nullptr) return *set;
  return written;
}

// What a scenario may state at a pointer.
const scenario::FieldLine& field_of(const std::string& pointer) {
  static const std::vector<scenario::FieldLine> lines = scenario::field_lines();
  return *std::find_if(
      lines.begin(), lines.end(),
      [any = scenario::any_index(pointer)](const scenario::FieldLine& each) { return each.pointer == any; });
}

}  // namespace

scenario::ShiveringEndurance endurance_at(double place) {
  using enum scenario::ShiveringEndurance;
  constexpr std::array laws{gives_out, tires, tires_late};
  return laws[std::min(static_cast<std::size_t>(place * laws.size()), laws.size() - 1)];
}

std::string event_name(const scenario::Uncertain& uncertain, std::size_t place) {
  return fmt::format("event {}: {}", place, word(uncertain.events[place].failure));
}

// Visits everything that is uncertain, always in the same order, and takes one number at each place.
struct Sampler::Walk {
  const Sampler& sampler;
  const Take& take;
  scenario::PointScale scale;
  Drawn out;

  void put(std::string pointer, Value value) {
    out.settings.push_back({std::move(pointer), std::move(value)});
  }

  // A distribution given by the user replaces a built-in factor.
  bool free(const std::string& pointer) const {
    const scenario::Uncertain& u = sampler.uncertain_;
    const auto& inputs = u.inputs.entries;
    return std::none_of(inputs.begin(), inputs.end(),
                        [&](const auto& each) { return each.first == pointer; }) &&
           std::none_of(u.groups.begin(), u.groups.end(), [&](const scenario::SharedInput& group) {
             return std::find(group.pointers.begin(), group.pointers.end(), pointer) != group.pointers.end();
           });
  }
  // What lies beyond the values that a scenario may state is cut off.
  void built_in(const std::string& pointer, double median, double sd_of_log) {
    if (!free(pointer)) return;
    const scenario::FieldLine& field = field_of(pointer);
    put(pointer,
        lognormal_within(median, sd_of_log, field.low, field.high, take(pointer, FactorKind::aleatory)));
  }

  Value value_of(const scenario::Distribution& distribution, double taken) const {
    const bool as_given = scale == scenario::PointScale::natural && of_numbers(distribution);
    return as_given ? Value(taken) : quantile(distribution, taken);
  }

  void inputs() {
    for (const auto& [pointer, distribution] : sampler.uncertain_.inputs.entries)
      put(pointer, value_of(distribution, take(pointer, kind_of(pointer))));
    for (const scenario::SharedInput& group : sampler.uncertain_.groups) {
      const Value value = value_of(group.distribution, take(group.name, kind_of(group.pointers.front())));
      for (const std::string& pointer : group.pointers) put(pointer, value);
    }
  }

  void unmeasured() {
    if (!sampler.uncertain_.unmeasured) return;
    if (sampler.written_.raft)
      for (const char* pointer : {"/raft/canopy_heat_loss_position", "/raft/leakage_position"})
        if (free(pointer)) put(pointer, take(pointer, FactorKind::epistemic));
    for (const char* pointer : scenario::model_error_positions)
      if (free(pointer)) put(pointer, take(pointer, FactorKind::epistemic));
    const std::string law = "/model/shivering_endurance";
    if (free(law)) put(law, std::string(word(endurance_at(take(law, FactorKind::epistemic)))));
  }

  void weather() {
    const std::string seed = "/weather/seed";
    if (!sampler.uncertain_.weather || !free(seed)) return;
    constexpr double seeds = 2147483648;  // 0 to the largest
    put(seed, std::floor(take(seed, FactorKind::aleatory) * seeds));
  }

  void spread() {
    if (!sampler.uncertain_.person_spread) return;
    for (std::size_t i = 0; i < sampler.written_.crew.size(); ++i) {
      const std::string here = fmt::format("/crew/{}/", i);
      const bool grown =
          now_at(out.settings, here + "age_years", sampler.written_.crew[i].age_years) >= k::grown_years;
      built_in(here + "shivering_drive_factor", 1,
               grown ? k::spread_shivering_drive : k::spread_child_shivering_drive);
      built_in(here + "shivering_ceiling_factor", 1, k::spread_shivering_ceiling);
      built_in(here + "resting_metabolism_factor", 1, k::spread_resting_metabolism);
      built_in(here + "sweat_factor", 1, k::spread_sweat);
      const std::string shift = here + "core_limit_shift_K";
      if (free(shift))
        put(shift, k::spread_core_limit_K * standard_normal_quantile(take(shift, FactorKind::aleatory)));
    }
  }

  // Apart from the other spreads and last of all, so that the other factors of a design keep their places.
  void swimmers() {
    if (!sampler.uncertain_.person_spread) return;
    for (std::size_t i = 0; i < sampler.written_.crew.size(); ++i)
      built_in(fmt::format("/crew/{}/swim_endurance_factor", i), 1, k::spread_swim_endurance);
  }

  // Height normal, body mass index lognormal and independent of it, fat about its regression; of children
  // about the medians of their age.
  void unknown_person(std::size_t index, const std::vector<UnknownPart>& parts) {
    const Person& written = sampler.written_.crew[index];
    const std::string here = fmt::format("/crew/{}/", index);
    const bool male = now_at(out.settings, here + "sex", std::string(word(written.sex))) == word(Sex::male);
    const double age = now_at(out.settings, here + "age_years", written.age_years);
    const bool child = age < scenario::adult_from_years;
    const scenario::Size usual = scenario::usual_size(male ? Sex::male : Sex::female, age);
    const std::string height_at = here + "height_m", mass_at = here + "mass_kg",
                      fat_at = here + "body_fat_pct";
    if (contains(parts, UnknownPart::height) && free(height_at)) {
      const double z = standard_normal_quantile(take(height_at, FactorKind::aleatory));
      put(height_at, child  ? usual.height_m * (1 + z * k::child_height_sd_share)
                     : male ? k::height_male_m + z * k::height_sd_male_m
                            : k::height_female_m + z * k::height_sd_female_m);
    }
    const double height = now_at(out.settings, height_at, written.height_m);
    if (contains(parts, UnknownPart::mass) && free(mass_at)) {
      const bool young = age < k::bmi_young_below_years;
      const double median = child  ? usual.mass_kg / (usual.height_m * usual.height_m)
                            : male ? (young ? k::bmi_young_male : k::bmi_male)
                                   : (young ? k::bmi_young_female : k::bmi_female);
      const double spread = child  ? k::child_bmi_gsd
                            : male ? (young ? k::bmi_gsd_young_male : k::bmi_gsd_male)
                                   : (young ? k::bmi_gsd_young_female : k::bmi_gsd_female);
      const double z = standard_normal_quantile(take(mass_at, FactorKind::aleatory));
      put(mass_at, median * std::exp(std::log(spread) * z) * height * height);
    }
    const double mass = now_at(out.settings, mass_at, written.mass_kg);
    if (contains(parts, UnknownPart::fat) && free(fat_at)) {
      const double middle = scenario::default_body_fat_pct(male ? Sex::male : Sex::female, age, height, mass);
      const double error = child ? k::child_fat_rmse_pct : k::body_fat_rmse_pct;
      // Nobody lives below the essential fat: that part of the normal distribution is cut off.
      const double none = standard_normal_share((k::essential_fat_pct - middle) / error);
      const double u = take(fat_at, FactorKind::aleatory);
      put(fat_at, middle + error * standard_normal_quantile(none + u * (1 - none)));
    }
  }

  void people() {
    const scenario::Uncertain& u = sampler.uncertain_;
    if (u.crew_unknown)
      for (std::size_t i = 0; i < sampler.written_.crew.size(); ++i) unknown_person(i, {});
    for (const scenario::UnknownPerson& person : u.unknown_persons)
      unknown_person(std::stoul(person.pointer.substr(std::string_view("/crew/").size())), person.unknown);
  }

  // A field as this future has it.
  template <class T>
  T as_it_is(const std::string& pointer, T written) const {
    return now_at(out.of_alternative, pointer, now_at(out.settings, pointer, written));
  }

  // People as they are drawn so far.
  std::vector<Climber> climbers() const {
    std::vector<Climber> crew;
    for (std::size_t i = 0; i < sampler.written_.crew.size(); ++i) {
      const Person& written = sampler.written_.crew[i];
      const std::string here = fmt::format("/crew/{}/", i);
      const std::string sex = as_it_is(here + "sex", std::string(word(written.sex)));
      const scenario::Ensemble* clothes =
          scenario::find_ensemble(as_it_is(here + "clothing", written.clothing));
      crew.push_back({sex == word(Sex::male) ? Sex::male : Sex::female,
                      as_it_is(here + "mass_kg", written.mass_kg), clothes && !clothes->waterproof});
    }
    return crew;
  }

  void raft() {
    const scenario::Scenario& written = sampler.written_;
    if (!sampler.uncertain_.readiness && !sampler.uncertain_.launch) return;
    auto known = written.readiness;
    if (known)
      for (auto [key, date] : {std::pair("/readiness/raft_serviced", &known->raft_serviced),
                               std::pair("/readiness/release_unit_expires", &known->release_unit_expires)})
        if (const std::string now = as_it_is(key, date->value_or("")); !now.empty()) *date = now;
    const double start_s = parse_time_utc(as_it_is("/start_time_utc", written.start_time_utc)).value();
    const std::string kind_at = "/raft/kind", persons_at = "/raft/capacity_persons",
                      air_at = "/weather/air_temperature_degC";
    const scenario::RaftKind* kind = scenario::find_raft(as_it_is(kind_at, written.raft->kind));
    const bool same = kind == nullptr || kind->key == written.raft->kind;
    const double persons = same ? written.raft->capacity_persons : kind->capacity_persons;
    const RaftBefore before{sampler.uncertain_,
                            known ? &*known : nullptr,
                            known ? scenario::months_overdue(*known, start_s).value_or(0) : 0,
                            known && scenario::is_past(known->release_unit_expires, start_s),
                            static_cast<int>(as_it_is(persons_at, persons)),
                            as_it_is(air_at, written.weather.air_temperature_degC.value_or(
                                                 std::numeric_limits<double>::quiet_NaN())),
                            climbers()};
    out.raft = draw_raft(before, take);
    // What is undated in a neglected raft is taken to be past its date, as it was in a trawler's rafts
    // (raftcases; judgement).
    if (sampler.uncertain_.readiness && known && out.raft.neglected) {
      constexpr std::size_t day_letters = 10;
      const std::string past = format_time_utc(start_s - 2 * day_s).substr(0, day_letters);
      for (const auto& [key, date] : {std::pair("/readiness/pack_expires", known->pack_expires),
                                      std::pair("/readiness/signals_expire", known->signals_expire)})
        if (!date && free(key)) put(key, past);
    }
    const std::string position_at = "/readiness/signals_position";
    if (sampler.uncertain_.readiness && known && free(position_at))
      put(position_at, take("readiness: signals that work", FactorKind::aleatory));
    if (!out.raft.launch || out.raft.no_raft) return;
    const LaunchDrawn& launch = *out.raft.launch;
    for (const char* key : {"minutes_in_water", "release_depth_m", "water_shipped_L", "wet_fraction"})
      put(std::string("/boarding/") + key, std::monostate());
    if (launch.reached == Reached::dry) put("/boarding/in_water", std::monostate());
    const bool by_hand = sampler.uncertain_.launch->way == scenario::LaunchWay::by_hand;
    put("/boarding/kind", std::string(word(launch.reached == Reached::dry ? scenario::BoardingKind::dry
                                           : by_hand                      ? scenario::BoardingKind::swim
                                                     : scenario::BoardingKind::float_free)));
    if (launch.reached == Reached::wet) put("/boarding/minutes_in_water", launch.minutes);
    if (launch.inverted)
      put("/boarding/water_shipped_L",
          k::shipped_swim_L_per_person * static_cast<double>(written.crew.size()));
  }

  void events() {
    const double duration_h = now_at(out.settings, "/duration_h", sampler.written_.duration_h);
    const auto& events = sampler.uncertain_.events;
    for (std::size_t i = 0; i < events.size(); ++i) {
      const scenario::UncertainFailure& event = events[i];
      const std::string name = event_name(sampler.uncertain_, i);
      const bool happens = take(name, FactorKind::aleatory) < event.probability;
      const double at_h =
          std::round(std::get<double>(quantile(event.at_h, take(name + ", hour", FactorKind::aleatory))));
      if (happens && at_h <= duration_h) out.failures.push_back({event.failure, at_h, event.in_waves_from_m});
    }
  }

  // Whoever of them is asked: which boarding holds is known once all is drawn.
  void first_minutes() {
    const auto& range = sampler.uncertain_.lost_in_first_minutes;
    if (!range) return;
    const double share =
        range->low + (range->high - range->low) * take("first minutes: share lost", FactorKind::epistemic);
    for (std::size_t i = 0; i < sampler.written_.crew.size(); ++i)
      if (const std::string at = fmt::format("/crew/{}/lost_in_first_minutes", i);
          free(at) && take(at, FactorKind::aleatory) < share)
        out.lost.push_back(at);
  }

  void alternatives() {
    const auto& all = sampler.uncertain_.alternatives;
    if (all.empty()) return;
    scenario::Distribution which;
    which.kind = scenario::DistributionKind::discrete;
    for (const scenario::Alternative& one : all) {
      which.values.emplace_back(one.name);
      which.weights.push_back(one.weight);
    }
    out.alternative = std::get<std::string>(quantile(which, take("alternatives", FactorKind::aleatory)));
    for (const scenario::Alternative& one : all)
      if (one.name == out.alternative)
        for (const auto& [pointer, value] : one.set.entries) out.of_alternative.push_back({pointer, value});
  }

  void everything() {
    inputs();
    unmeasured();
    weather();
    spread();
    people();
    events();
    alternatives();
    raft();
    if (sampler.uncertain_.rescue)
      out.rescue_h = rescue_h(*sampler.uncertain_.rescue, take("rescue", FactorKind::aleatory));
    swimmers();
    first_minutes();
  }
};

Sampler::Sampler(const scenario::ValidScenario& valid)
    : file_(valid.file), folder_(valid.folder), written_(valid.scenario) {
  if (valid.scenario.uncertain) uncertain_ = *valid.scenario.uncertain;
  auto plain = std::make_shared<scenario::Node>(*valid.document);
  std::erase_if(plain->members, [](const scenario::Member& each) { return each.key == "uncertain"; });
  plain_ = std::move(plain);
  const Take name_each = [this](const std::string& name, FactorKind kind) {
    std::uint32_t stream = stream_of(name);
    const auto taken = [&] {
      return std::any_of(factors_.begin(), factors_.end(),
                         [&](const Factor& each) { return each.stream == stream; });
    };
    while (taken()) ++stream;  // two names of one number
    factors_.push_back({name, kind, stream, has_value(uncertain_, name)});
    return 0.5;
  };
  walk(name_each, scenario::PointScale::unit);
  correlate();
}

Drawn Sampler::walk(const Take& take, scenario::PointScale scale) const {
  Walk walk{*this, take, scale, {}};
  walk.everything();
  return std::move(walk.out);
}

void Sampler::correlate() {
  const auto member = [&](const std::string& name) {
    const auto factor =
        std::find_if(factors_.begin(), factors_.end(), [&](const Factor& each) { return each.name == name; });
    const auto index = static_cast<std::size_t>(factor - factors_.begin());
    const auto at = std::find(copula_.members.begin(), copula_.members.end(), index);
    if (at != copula_.members.end()) return at - copula_.members.begin();
    copula_.members.push_back(index);
    return static_cast<std::ptrdiff_t>(copula_.members.size() - 1);
  };
  for (const scenario::Together& pair : uncertain_.together) member(pair.first), member(pair.second);
  const auto size = static_cast<Eigen::Index>(copula_.members.size());
  Eigen::MatrixXd matrix = Eigen::MatrixXd::Identity(size, size);
  for (const scenario::Together& pair : uncertain_.together) {
    const auto a = member(pair.first), b = member(pair.second);
    matrix(a, b) = matrix(b, a) = pair.correlation;
  }
  copula_.lower = matrix.llt().matrixL();
}

std::vector<double> Sampler::point(std::uint64_t seed, std::uint64_t sample) const {
  std::vector<double> out;
  out.reserve(factors_.size());
  for (const Factor& factor : factors_) out.push_back(uniform(seed, sample, factor.stream, 0));
  return out;
}

std::vector<double> Sampler::correlated(const std::vector<double>& point) const {
  std::vector<double> u = point;
  const auto size = static_cast<Eigen::Index>(copula_.members.size());
  Eigen::VectorXd scores(size);
  for (Eigen::Index i = 0; i < size; ++i)
    scores(i) = standard_normal_quantile(point[copula_.members[static_cast<std::size_t>(i)]]);
  scores = copula_.lower * scores;
  for (Eigen::Index i = 0; i < size; ++i)
    u[copula_.members[static_cast<std::size_t>(i)]] =
        std::clamp(standard_normal_share(scores(i)), least_uniform, 1 - least_uniform);
  return u;
}

Drawn Sampler::at(const std::vector<double>& point, scenario::PointScale scale) const {
  if (point.size() != factors_.size())
    throw std::invalid_argument(
        fmt::format("sampler: a point of {} numbers for {} factors", point.size(), factors_.size()));
  const std::vector<double> taken = scale == scenario::PointScale::unit ? correlated(point) : point;
  std::size_t next = 0;
  return walk([&](const std::string&, FactorKind) { return taken[next++]; }, scale);
}

scenario::Node Sampler::document_of(const Drawn& sample) const {
  scenario::Node root = *plain_;
  const auto put = [&](const Setting& setting) {
    if (!scenario::put(root, setting.pointer, setting.value))
      throw std::logic_error("sampler: no way to " + setting.pointer);
  };
  for (const Setting& setting : sample.settings) put(setting);
  const auto fail = [&](const scenario::Failure& failure) {
    scenario::Node entry = scenario::empty_object();
    entry.members.push_back({"kind", scenario::word_node(word(failure.kind))});
    entry.members.push_back({"at_h", scenario::number_node(failure.at_h)});
    if (failure.in_waves_from_m)
      entry.members.push_back({"in_waves_from_m", scenario::number_node(*failure.in_waves_from_m)});
    scenario::append(root, "failures", std::move(entry));
  };
  for (const scenario::Failure& failure : sample.failures) fail(failure);
  for (const Setting& setting : sample.of_alternative) put(setting);
  const auto puts = [&](std::string_view pointer) {
    const auto here = [&](const Setting& setting) { return setting.pointer == pointer; };
    return std::any_of(sample.settings.begin(), sample.settings.end(), here) ||
           std::any_of(sample.of_alternative.begin(), sample.of_alternative.end(), here);
  };
  if (puts("/raft/kind") && !puts("/stores/pack")) scenario::carry_own_pack(root, written_);
  if (sample.raft.no_raft && scenario::member(&root, "raft") != nullptr) scenario::take_raft_away(root);
  for (const scenario::FailureKind kind : sample.raft.failures)
    if (scenario::can_fail(root, kind)) fail({kind, 0});
  if (scenario::enter_water(root))
    for (const std::string& pointer : sample.lost)
      if (!puts(pointer)) put({pointer, true});
  return root;
}

scenario::Validated Sampler::scenario_of(const Drawn& sample) const {
  return scenario::validate_document(document_of(sample), file_, folder_);
}

std::string Sampler::text_of(const Drawn& sample) const {
  return scenario::write_document(document_of(sample));
}

scenario::Diagnostics range_cautions(const scenario::ValidScenario& valid) {
  scenario::Diagnostics out;
  if (!valid.scenario.uncertain) return out;
  constexpr double tolerated = 0.001;
  const std::vector<scenario::FieldLine> fields = scenario::field_lines();
  const auto look = [&](const scenario::Distribution& d, const std::string& pointer) {
    const auto field = std::find_if(fields.begin(), fields.end(), [&](const scenario::FieldLine& each) {
      return each.pointer == scenario::any_index(pointer);
    });
    if (field == fields.end() || !field->is_number) return;
    const double outside =
        share_below(d, field->low) + 1 -
        share_below(d, std::nextafter(field->high, std::numeric_limits<double>::infinity()));
    if (outside > tolerated)
      out.push_back(
          {valid.file, pointer,
           fmt::format("{:.2g} % of its distribution lies outside {:g} to {:g} {}: such samples fail "
                       "and are counted",
                       pct * outside, field->low, field->high, field->unit)});
  };
  for (const auto& [pointer, d] : valid.scenario.uncertain->inputs.entries) look(d, pointer);
  for (const scenario::SharedInput& group : valid.scenario.uncertain->groups)
    for (const std::string& pointer : group.pointers) look(group.distribution, pointer);
  return out;
}

}  // namespace bide::study
