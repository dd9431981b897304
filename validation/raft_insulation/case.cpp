#include "validation/raft_insulation/manikin.hpp"
#include "validation/topics.hpp"

namespace bide::validation::raft_insulation {

namespace {

constexpr const char* topic = "raft_insulation";
constexpr const char* study = "Mak 2009";

Row within(const std::string& quantity, const char* unit, double published, double model, const char* why) {
  constexpr double share = 0.15;
  return make_row(topic, study, quantity, unit, published, (1 - share) * published, (1 + share) * published,
                  model, why);
}

}  // namespace

std::vector<Row> rows() {
  const char* tolerance = "15 %: the gap of manikin and people";
  const char* m2K_W = "m2 K/W";
  RaftTrial inflated_dry, inflated_wet, flat_dry, flat_wet, foam_dry, foam_wet;
  inflated_wet.wet = flat_wet.wet = foam_wet.wet = true;
  flat_dry.inflated = flat_wet.inflated = false;
  foam_dry.foam = foam_wet.foam = true;
  RaftTrial seated = flat_wet, covered = flat_wet;
  seated.on_lifejacket = covered.aid = true;

  const double Idry = manikin_insulation_m2K_W(inflated_dry), Iwet = manikin_insulation_m2K_W(inflated_wet);
  const double Udry = manikin_insulation_m2K_W(flat_dry), Uwet = manikin_insulation_m2K_W(flat_wet);
  const double aid = manikin_insulation_m2K_W(covered);
  std::vector<Row> out;
  const auto add = [&](Row row, bool used = false) {
    row.calibrated = used;
    out.push_back(std::move(row));
  };
  add(within("inflated floor, dry", m2K_W, 0.236, Idry, tolerance), true);
  out.back().why += "; the clothing's one number is set on this row";
  add(within("inflated floor, wet", m2K_W, 0.146, Iwet, tolerance), true);
  out.back().why += "; soaked clothing's one number is set on this row";
  add(within("flat floor, dry", m2K_W, 0.174, Udry, tolerance));
  add(within("flat floor, wet", m2K_W, 0.101, Uwet, tolerance));
  add(make_row(topic, study, "foam floor, dry", m2K_W, 0.2285, 0.85 * 0.221, 1.15 * 0.236,
               manikin_insulation_m2K_W(foam_dry), "15 % about either make"),
      true);
  add(within("foam floor, wet", m2K_W, 0.129, manikin_insulation_m2K_W(foam_wet),
             "15 %; for information, the foam is not described"));
  add(within("flat, wet, seated on a lifejacket", m2K_W, 0.149, manikin_insulation_m2K_W(seated), tolerance));
  add(within("flat, wet, protective aid worn", m2K_W, 0.158, aid, tolerance));
  add(make_row(topic, study, "flat, 10 cm of water", m2K_W, 0.0645, 0.050, 0.079,
               manikin_insulation_m2K_W(flat_wet, 0.1), "manikin to human, as printed"));
  for (Row& r : out) r.trivial = 0.236;

  const std::size_t first_ratio = out.size();
  const char* ratio = "15 %: as the insulations";
  add(within("wet over dry, flat floor", "-", 0.580, Uwet / Udry, ratio));
  add(within("flat over inflated, dry", "-", 0.737, Udry / Idry, ratio));
  add(within("flat over inflated, wet", "-", 0.692, Uwet / Iwet, ratio));
  add(within("aid over none, flat, wet, people", "-", 1.48, aid / Uwet, ratio));
  for (std::size_t i = first_ratio; i < out.size(); ++i) out[i].trivial = 1;

  const char* floor =
      "too little of the body rests on the floor (8 % of the skin) and pressed clothing keeps "
      "too much insulation: both estimates would have to be near the ends of their ranges";
  const char* water =
      "clothing under water is worth a tenth of itself dry, the film of the water and how much of a seated "
      "body 10 cm cover are judgements; the manikin's and the people's figure differ by 1.6 times";
  for (Row& r : out)
    if (r.quantity.find("10 cm") != std::string::npos)
      blame(r, water);
    else if (r.quantity.find("flat") != std::string::npos)
      blame(r, floor);
  return out;
}

std::vector<Curve> curves(const std::vector<Row>& rows) {
  std::vector<Row> insulations;
  for (const Row& row : rows)
    if (row.unit == "m2 K/W") insulations.push_back(row);
  Curve curve = by_category(insulations);
  curve.title = "Insulation of a whole person in a raft";
  curve.says =
      "A thermal manikin in a sixteen-person raft at 5 degC, with 15 % either way (10 cm of water: manikin "
      "to human), and "
      "the model. Both inflated floors and the dry foam were used to set it.";
  curve.x_label = "floor and clothing";
  curve.y_label = "insulation, skin to surroundings";
  curve.y_from_zero = true;
  return {curve};
}

}  // namespace bide::validation::raft_insulation
