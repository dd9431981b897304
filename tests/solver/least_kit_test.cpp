// The search against an independent solver (GLPK), where needs add up: then a kit that fails in few enough of
// the futures is a solution of a mixed-integer programme, and the least one is its optimum.
#include "bide/study/search/least_kit.hpp"

#include <doctest/doctest.h>
#include <glpk.h>

#include <cmath>
#include <vector>

#include "bide/core/random.hpp"

using namespace bide;
using study::Kit;
using study::KitItem;

namespace {

constexpr int futures = 40, allowed = 3;
constexpr double mass_step_kg = 0.01;  // whole hundredths, so that equal sums are equal

// Every future asks for water and for food; every item brings some of each.
struct Case {
  std::vector<KitItem> items;
  std::vector<double> water, food;              // of one dose
  std::vector<double> needs_water, needs_food;  // by future
};

Case made_up(std::uint64_t seed) {
  Case out;
  for (std::uint32_t i = 0; i < 6; ++i) {
    const double mass = mass_step_kg * std::round(20 + 180 * uniform(seed, i, 1, 0));
    out.items.push_back({4, {mass, 0, 1}, true});
    out.water.push_back(uniform(seed, i, 2, 0));
    out.food.push_back(uniform(seed, i, 3, 0));
  }
  for (std::uint32_t k = 0; k < futures; ++k) {
    out.needs_water.push_back(2 + 3 * uniform(seed, k, 4, 0));
    out.needs_food.push_back(1 + 3 * uniform(seed, k, 5, 0));
  }
  return out;
}

double brought(const std::vector<double>& of, const Kit& kit) {
  double sum = 0;
  for (std::size_t i = 0; i < kit.size(); ++i) sum += of[i] * kit[i];
  return sum;
}

bool enough(const Case& c, const Kit& kit) {
  int missed = 0;
  const double water = brought(c.water, kit), food = brought(c.food, kit);
  for (std::size_t k = 0; k < c.needs_water.size(); ++k)
    missed += water >= c.needs_water[k] && food >= c.needs_food[k] ? 0 : 1;
  return missed <= allowed;
}

// min mass x, so that a x >= d (1 - z) in each future for water and food, and at most `allowed` of z are 1.
double optimum(const Case& c) {
  glp_term_out(GLP_OFF);
  glp_prob* problem = glp_create_prob();
  const int items = static_cast<int>(c.items.size());
  glp_set_obj_dir(problem, GLP_MIN);
  glp_add_cols(problem, items + futures);
  for (int i = 1; i <= items; ++i) {
    const KitItem& item = c.items[static_cast<std::size_t>(i - 1)];
    glp_set_col_kind(problem, i, GLP_IV);
    glp_set_col_bnds(problem, i, GLP_DB, 0, item.most);
    glp_set_obj_coef(problem, i, item.each.mass_kg);
  }
  for (int k = 1; k <= futures; ++k) glp_set_col_kind(problem, items + k, GLP_BV);
  const auto add_row = [&](const std::vector<double>& of, double need, int future) {
    const int row = glp_add_rows(problem, 1);
    std::vector<int> columns{0};
    std::vector<double> values{0};
    for (int i = 1; i <= items; ++i)
      columns.push_back(i), values.push_back(of[static_cast<std::size_t>(i - 1)]);
    columns.push_back(items + future), values.push_back(need);
    glp_set_row_bnds(problem, row, GLP_LO, need, 0);
    glp_set_mat_row(problem, row, static_cast<int>(columns.size()) - 1, columns.data(), values.data());
  };
  for (int k = 1; k <= futures; ++k) {
    add_row(c.water, c.needs_water[static_cast<std::size_t>(k - 1)], k);
    add_row(c.food, c.needs_food[static_cast<std::size_t>(k - 1)], k);
  }
  const int row = glp_add_rows(problem, 1);
  std::vector<int> columns{0};
  std::vector<double> values{0};
  for (int k = 1; k <= futures; ++k) columns.push_back(items + k), values.push_back(1);
  glp_set_row_bnds(problem, row, GLP_UP, 0, allowed);
  glp_set_mat_row(problem, row, futures, columns.data(), values.data());

  glp_iocp options;
  glp_init_iocp(&options);
  options.presolve = GLP_ON;
  options.msg_lev = GLP_MSG_OFF;
  REQUIRE(glp_intopt(problem, &options) == 0);
  REQUIRE(glp_mip_status(problem) == GLP_OPT);
  const double mass_kg = glp_mip_obj_val(problem);
  glp_delete_prob(problem);
  return mass_kg;
}

}  // namespace

TEST_CASE("the search and a mixed-integer solver agree on the least mass") {
  for (std::uint64_t seed = 1; seed <= 8; ++seed) {
    const Case c = made_up(seed);
    study::KitSearch search(c.items, {}, [&](const Kit& kit) { return enough(c, kit); });
    const auto found = search.next();
    REQUIRE(found);
    CHECK(enough(c, *found));
    CHECK(cost_of(c.items, *found).mass_kg == doctest::Approx(optimum(c)).epsilon(1e-6));
  }
}
