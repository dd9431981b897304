#include "bide/scenario/priors.hpp"

#include <algorithm>
#include <stdexcept>

#include "bide/constants/people.hpp"
#include "bide/core/interpolate.hpp"
#include "bide/scenario/embedded.hpp"

namespace bide::scenario {

namespace embedded {
extern const std::string_view priors;
}

const Priors& priors() {
  static const Priors all = read_embedded<Priors>({embedded::priors});
  return all;
}

const Prior& prior(std::string_view key) {
  const auto& all = priors().priors;
  const auto at = std::find_if(all.begin(), all.end(), [&](const Prior& each) { return each.key == key; });
  if (at == all.end()) throw std::logic_error("prior: no " + std::string(key));
  return *at;
}

Distribution raft_prior(int persons) {
  Distribution out;
  out.kind = DistributionKind::discrete;
  for (const RaftFamily& family : priors().rafts) {
    std::vector<const RaftKind*> members;
    for (const RaftKind& raft : catalogue().rafts)
      if (raft.key == family.key + std::to_string(raft.capacity_persons)) members.push_back(&raft);
    std::sort(members.begin(), members.end(),
              [](const RaftKind* a, const RaftKind* b) { return a->capacity_persons < b->capacity_persons; });
    if (members.empty()) throw std::logic_error("priors: no raft begins with " + family.key);
    auto from = std::find_if(members.begin(), members.end(),
                             [&](const RaftKind* raft) { return raft->capacity_persons >= persons; });
    if (from == members.end()) --from;
    const auto& sizes = priors().sizes;
    const auto count = std::min(sizes.size(), static_cast<std::size_t>(members.end() - from));
    double sum = 0;
    for (std::size_t i = 0; i < count; ++i) sum += sizes[i];
    for (std::size_t i = 0; i < count; ++i, ++from) {
      out.values.emplace_back((*from)->key);
      out.weights.push_back(family.weight * sizes[i] / sum);
    }
  }
  return out;
}

Size usual_size(Sex sex, double age_years) {
  namespace k = constants;
  const bool male = sex == Sex::male;
  if (age_years >= adult_from_years) {
    const double height_m = male ? k::height_male_m : k::height_female_m;
    const bool young = age_years < k::bmi_young_below_years;
    const double bmi =
        male ? (young ? k::bmi_young_male : k::bmi_male) : (young ? k::bmi_young_female : k::bmi_female);
    return {height_m, bmi * height_m * height_m};
  }
  std::vector<double> ages, heights, masses;
  for (const Growth& row : priors().growth) {
    ages.push_back(row.age_years);
    heights.push_back(male ? row.height_male_m : row.height_female_m);
    masses.push_back(male ? row.mass_male_kg : row.mass_female_kg);
  }
  return {interpolate_linear(ages, heights, age_years), interpolate_linear(ages, masses, age_years)};
}

}  // namespace bide::scenario
