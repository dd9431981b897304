// Rules of "uncertain": what each distribution needs, which inputs exist, what may stand together.
#include <Eigen/Cholesky>
#include <algorithm>
#include <charconv>
#include <cmath>

#include "bide/scenario/rules.hpp"
#include "bide/scenario/words.hpp"
#include "bide/scenario/write.hpp"

namespace bide::scenario {
namespace {

using Holds = FieldLine::Holds;

// Every input that may be uncertain.
const std::vector<FieldLine>& inputs() {
  static const std::vector<FieldLine> lines = [] {
    std::vector<FieldLine> all = field_lines();
    std::erase_if(all, [](const FieldLine& line) {
      return line.holds == Holds::parts || line.pointer.rfind("/uncertain", 0) == 0 ||
             line.pointer == "/format" || line.pointer == "/name" || line.pointer == "/setting" ||
             line.pointer == "/weather/file";
    });
    return all;
  }();
  return lines;
}

struct UncertainRules {
  const Scenario& scenario;
  Reader& reader;
  std::vector<std::string> taken;  // inputs that have a distribution

  void report(const std::string& at, std::string message) { reader.report(at, std::move(message)); }

  // "/crew/3/mass_kg" needs a fourth person.
  bool entry_exists(const std::string& pointer) const {
    const auto has = [&](std::string_view list, std::size_t size) {
      if (pointer.rfind(list, 0) != 0) return true;
      std::size_t index = 0;
      std::from_chars(pointer.data() + list.size(), pointer.data() + pointer.size(), index);
      return index < size;
    };
    return has("/crew/", scenario.crew.size()) && has("/failures/", scenario.failures.size()) &&
           has("/stores/extra/", scenario.stores.extra.size());
  }

  // The field a pointer names; null and reported when there is none.
  const FieldLine* input(const std::string& pointer, const std::string& at) {
    const std::string any = any_index(pointer);
    for (const FieldLine& line : inputs()) {
      if (line.pointer != any || pointer.find('*') != std::string::npos) continue;
      if (entry_exists(pointer)) return &line;
      report(at, fmt::format("found {}, which is not in this scenario; allowed an input of an entry it has",
                             in_quotes(pointer)));
      return nullptr;
    }
    std::vector<std::string_view> known;
    for (const FieldLine& line : inputs()) known.push_back(line.pointer);
    report(at, fmt::format("found {}, which is no input; allowed a JSON pointer to one{}", in_quotes(pointer),
                           did_you_mean(any, known)));
    return nullptr;
  }

  void claim(const std::string& pointer, const std::string& at) {
    if (std::find(taken.begin(), taken.end(), pointer) != taken.end())
      report(at, fmt::format("found {} a second time; allowed one distribution for an input",
                             in_quotes(pointer)));
    taken.push_back(pointer);
  }

  // One value of a list, for the field it is meant for.
  void value(const Value& value, const FieldLine& field, const std::string& at) {
    const auto refuse = [&](const std::string& found) {
      report(at, fmt::format("found {}; allowed {} for {}", found, field.allowed, field.pointer));
    };
    if (const auto* number = std::get_if<double>(&value)) {
      const bool whole = field.holds != Holds::whole || *number == std::floor(*number);
      if (!field.is_number || !whole || *number < field.low || *number > field.high)
        refuse(fmt::format("{}", *number));
    } else if (const auto* truth = std::get_if<bool>(&value)) {
      if (field.holds != Holds::truth) refuse(*truth ? "true" : "false");
    } else if (const auto* word = std::get_if<std::string>(&value)) {
      const bool known = field.holds == Holds::text ||
                         std::find(field.words.begin(), field.words.end(), *word) != field.words.end();
      if (!known) refuse(in_quotes(*word));
    } else {
      refuse("null");
    }
  }

  struct Parameter {
    const char* key;
    bool stated, wanted;
  };
  // Each parameter stands exactly where its kind has it; true when all do.
  bool parameters(std::initializer_list<Parameter> all, std::string_view kind, const std::string& at) {
    bool right = true;
    for (const auto& [key, stated, wanted] : all) {
      if (stated == wanted || !reader.sound(child(at, key))) continue;
      right = false;
      if (wanted)
        report(child(at, key), fmt::format("missing; required with kind {}", kind));
      else
        report(child(at, key), fmt::format("found a value; not allowed with kind {}", kind));
    }
    return right;
  }

  void distribution(const Distribution& d, const FieldLine* field, const std::string& at) {
    using K = DistributionKind;
    const K kind = d.kind;
    if (!reader.sound(child(at, "kind"))) return;
    const bool listed = kind == K::discrete || kind == K::empirical;
    const bool bounded = kind == K::uniform || kind == K::truncated_normal || kind == K::triangular;
    const bool normal = kind == K::normal || kind == K::truncated_normal;
    const bool right =
        parameters({{"low", d.low.has_value(), bounded},
                    {"high", d.high.has_value(), bounded},
                    {"mean", d.mean.has_value(), normal},
                    {"sd", d.sd.has_value(), normal},
                    {"median", d.median.has_value(), kind == K::lognormal},
                    {"geometric_sd", d.geometric_sd.has_value(), kind == K::lognormal},
                    {"mode", d.mode.has_value(), kind == K::triangular},
                    {"values", !d.values.empty(), listed},
                    {"weights", !d.weights.empty(), kind == K::discrete && !d.weights.empty()}},
                   word(kind), at);
    if (!right || !reader.sound(at)) return;
    if (field && !listed && field->holds != Holds::number)
      report(child(at, "kind"), fmt::format("found {} for {}, which is {}; allowed discrete", word(kind),
                                            field->pointer, field->allowed));
    if (bounded && !(*d.low < *d.high))
      report(child(at, "low"), fmt::format("found {}; allowed below high, which is {}", *d.low, *d.high));
    if (normal && !(*d.sd > 0)) report(child(at, "sd"), "found 0; allowed above 0");
    if (kind == K::triangular && (*d.mode < *d.low || *d.mode > *d.high))
      report(child(at, "mode"),
             fmt::format("found {}; allowed from low to high, {} to {}", *d.mode, *d.low, *d.high));
    if (kind == K::lognormal && (!(*d.median > 0) || !(*d.geometric_sd > 1)))
      report(at, fmt::format("found median {} and geometric_sd {}; allowed above 0 and above 1", *d.median,
                             *d.geometric_sd));
    lists(d, field, at);
  }

  void lists(const Distribution& d, const FieldLine* field, const std::string& at) {
    for (std::size_t i = 0; i < d.values.size(); ++i) {
      const std::string here = child(child(at, "values"), i);
      if (d.kind == DistributionKind::empirical && !std::holds_alternative<double>(d.values[i]))
        report(here, "found no number; allowed numbers in an empirical distribution");
      else if (field)
        value(d.values[i], *field, here);
      else if (!std::holds_alternative<double>(d.values[i]))
        report(here, "found no number; allowed a time");
    }
    if (d.weights.empty()) return;
    if (d.weights.size() != d.values.size())
      report(child(at, "weights"), fmt::format("found {} weights for {} values; allowed one for each",
                                               d.weights.size(), d.values.size()));
    weights(d.weights, child(at, "weights"));
  }

  void weights(const std::vector<double>& all, const std::string& at) {
    double sum = 0;
    for (std::size_t i = 0; i < all.size(); ++i) {
      if (all[i] < 0) report(child(at, i), fmt::format("found {}; allowed 0 or above", all[i]));
      sum += all[i];
    }
    if (!(sum > 0)) report(at, "found weights that are all 0; allowed at least one above 0");
  }

  void correlations(const Uncertain& u) {
    if (u.together.empty()) return;
    std::vector<std::string_view> names;
    for (const auto& [pointer, d] : u.inputs.entries) names.push_back(pointer);
    for (const SharedInput& group : u.groups) names.push_back(group.name);
    std::vector<std::string_view> correlated;  // the rows of the matrix
    for (const Together& pair : u.together)
      for (const std::string& name : {pair.first, pair.second})
        if (const auto at_name = std::find(names.begin(), names.end(), name);
            at_name != names.end() &&
            std::find(correlated.begin(), correlated.end(), name) == correlated.end())
          correlated.push_back(*at_name);
    const auto size = static_cast<Eigen::Index>(correlated.size());
    Eigen::MatrixXd matrix = Eigen::MatrixXd::Identity(size, size);
    const std::string at = "/uncertain/together";
    bool known = true;
    for (std::size_t i = 0; i < u.together.size(); ++i) {
      const Together& pair = u.together[i];
      const auto place = [&](const std::string& name, const char* key) -> Eigen::Index {
        const auto found = std::find(correlated.begin(), correlated.end(), name);
        if (found != correlated.end()) return found - correlated.begin();
        known = false;
        report(child(child(at, i), key),
               fmt::format("found {}; allowed an uncertain input or the name of a group{}", in_quotes(name),
                           did_you_mean(name, names)));
        return 0;
      };
      const Eigen::Index a = place(pair.first, "first"), b = place(pair.second, "second");
      if (!known) continue;
      if (a == b || matrix(a, b) != 0)
        report(child(at, i), "found an input with itself, or a pair a second time; allowed each pair once");
      else
        matrix(a, b) = matrix(b, a) = pair.correlation;
    }
    if (!known || !reader.sound(at)) return;
    if (Eigen::LLT<Eigen::MatrixXd>(matrix).info() != Eigen::Success)
      report(at, "found correlations that contradict one another; allowed a positive definite matrix");
  }

  void alternatives(const Uncertain& u) {
    const std::string at = "/uncertain/alternatives";
    std::vector<double> all;
    std::vector<std::string> names;
    for (std::size_t i = 0; i < u.alternatives.size(); ++i) {
      const Alternative& one = u.alternatives[i];
      all.push_back(one.weight);
      if (std::find(names.begin(), names.end(), one.name) != names.end())
        report(child(child(at, i), "name"),
               fmt::format("found {} a second time; allowed once", in_quotes(one.name)));
      names.push_back(one.name);
      for (const auto& [pointer, put] : one.set.entries) {
        const std::string here = child(child(child(at, i), "set"), pointer);
        if (std::holds_alternative<std::monostate>(put)) {
          removable(pointer, here);
        } else if (const FieldLine* field = input(pointer, here)) {
          value(put, *field, here);
        }
      }
    }
    if (!all.empty() && reader.sound(at)) weights(all, at);
  }

  // A field or a part that may be left out; entries of lists stay.
  void removable(const std::string& pointer, const std::string& at) {
    static const std::vector<FieldLine> all = field_lines();
    const bool known = std::any_of(all.begin(), all.end(), [&](const FieldLine& line) {
      return line.pointer == any_index(pointer) && line.pointer.rfind("/uncertain", 0) != 0;
    });
    if (!known || !entry_exists(pointer))
      report(at, fmt::format("found {}, which is no field; allowed null for a field that exists",
                             in_quotes(pointer)));
  }

  void rescue(const Rescue& r) {
    using K = RescueKind;
    const std::string at = "/uncertain/rescue";
    if (!reader.sound(child(at, "kind"))) return;
    parameters({{"at_h", r.at_h.has_value(), r.kind == K::fixed},
                {"median_h", r.median_h.has_value(), r.kind == K::lognormal},
                {"geometric_sd", r.geometric_sd.has_value(), r.kind == K::lognormal},
                {"scale_h", r.scale_h.has_value(), r.kind == K::weibull},
                {"shape", r.shape.has_value(), r.kind == K::weibull},
                {"hours", !r.hours.empty(), r.kind == K::empirical},
                {"held_back_above", r.held_back_above.has_value(),
                 r.held_back_above.has_value() && r.kind != K::none}},
               word(r.kind), at);
    const std::string held = child(at, "held_back_above");
    if (r.held_back_above && !r.held_back_above->wind_speed_m_s && !r.held_back_above->wave_height_m &&
        reader.sound(held))
      report(held, "found no limit; allowed wind_speed_m_s, wave_height_m or both");
    if (r.kind == K::lognormal && r.geometric_sd && !(*r.geometric_sd > 1))
      report(child(at, "geometric_sd"), "found 1; allowed above 1");
    for (std::size_t i = 0; i < r.hours.size(); ++i)
      if (r.hours[i] < 0)
        report(child(child(at, "hours"), i), fmt::format("found {}; allowed 0 or above", r.hours[i]));
  }

  void first_minutes(const FirstMinutes& share) {
    const std::string at = "/uncertain/lost_in_first_minutes/low";
    if (share.low > share.high && reader.sound(at) && reader.sound("/uncertain/lost_in_first_minutes/high"))
      report(at, fmt::format("found {}; allowed at most high, which is {}", share.low, share.high));
  }

  void people(const Uncertain& u) {
    const std::string at = "/uncertain/unknown_persons";
    for (std::size_t i = 0; i < u.unknown_persons.size(); ++i) {
      const std::string& pointer = u.unknown_persons[i].pointer;
      if (any_index(pointer) != "/crew/*" || !entry_exists(pointer))
        report(child(child(at, i), "pointer"), fmt::format("found {}; allowed /crew/0 to /crew/{}",
                                                           in_quotes(pointer), scenario.crew.size() - 1));
    }
    if (u.crew_unknown && !u.unknown_persons.empty())
      report(at, "found people beside crew_unknown, which means everybody; allowed one of the two");
  }

  void all(const Uncertain& u) {
    const std::string at = "/uncertain";
    for (const auto& [pointer, d] : u.inputs.entries) {
      const std::string here = child(child(at, "inputs"), pointer);
      if (!reader.sound(here)) continue;
      claim(pointer, here);
      if (const FieldLine* field = input(pointer, here)) distribution(d, field, here);
    }
    for (std::size_t i = 0; i < u.groups.size(); ++i) {
      const SharedInput& group = u.groups[i];
      const std::string here = child(child(at, "groups"), i);
      const FieldLine* first = nullptr;
      for (std::size_t k = 0; k < group.pointers.size(); ++k) {
        const std::string place = child(child(here, "pointers"), k);
        claim(group.pointers[k], place);
        const FieldLine* field = input(group.pointers[k], place);
        if (!first) first = field;
      }
      if (first) distribution(group.distribution, first, child(here, "distribution"));
    }
    for (std::size_t i = 0; i < u.events.size(); ++i)
      distribution(u.events[i].at_h, nullptr, child(child(child(at, "events"), i), "at_h"));
    if (u.launch && u.launch->sinks_after_min)
      distribution(*u.launch->sinks_after_min, nullptr, child(child(at, "launch"), "sinks_after_min"));
    correlations(u);
    alternatives(u);
    people(u);
    if (u.lost_in_first_minutes) first_minutes(*u.lost_in_first_minutes);
    if (u.rescue) rescue(*u.rescue);
    if (u.weather && scenario.weather.kind != WeatherKind::variable)
      report(child(at, "weather"), fmt::format("found true with weather kind {}; allowed with kind variable",
                                               word(scenario.weather.kind)));
  }
};

}  // namespace

void check_uncertain(const Scenario& scenario, Reader& reader) {
  if (!scenario.uncertain || !reader.sound("/crew")) return;
  UncertainRules rules{scenario, reader, {}};
  rules.all(*scenario.uncertain);
}

}  // namespace bide::scenario
