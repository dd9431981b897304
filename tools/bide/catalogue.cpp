// bide catalogue: rafts, packs, clothing, items and seas, with the source of each.
#include "bide/scenario/catalogue.hpp"

#include <fmt/core.h>

#include <memory>

#include "bide/core/notice.hpp"
#include "bide/scenario/sea_areas.hpp"
#include "bide/scenario/words.hpp"
#include "bide/scenario/write.hpp"
#include "commands.hpp"
#include "output.hpp"
#include "terminal.hpp"

namespace bide::tool {
namespace {

std::string entry(const std::string& key, const std::string& title, const std::string& facts,
                  const std::string& source) {
  return fmt::format("{}\n  {}\n{}  source: {}\n", key, title, facts.empty() ? "" : "  " + facts + "\n",
                     source);
}

std::string rafts() {
  std::string out = "RAFTS\n";
  for (const scenario::RaftKind& raft : scenario::catalogue().rafts)
    out += entry(
        raft.key, raft.title,
        fmt::format("floor {} m2, height {} m, tube {} m, openings {} m2, rain catch {} m2, usual pack {}",
                    raft.floor_area_m2, raft.canopy_height_m, raft.tube_diameter_m, raft.opening_area_m2,
                    raft.rain_catch_area_m2, raft.pack),
        raft.source);
  return out;
}

std::string packs() {
  std::string out = "PACKS\n";
  for (const scenario::PackKind& pack : scenario::catalogue().packs) {
    std::string facts = fmt::format("rafts for {} to {} persons", pack.smallest_capacity_persons,
                                    pack.largest_capacity_persons);
    for (const scenario::PackItem& item : pack.items) {
      std::string rule;
      const auto part = [&](double quantity, const char* words) {
        if (quantity > 0) rule += fmt::format("{}{:g} {}", rule.empty() ? "" : ", ", quantity, words);
      };
      part(item.per_person, "a person");
      part(item.per_raft, "a raft");
      part(item.at_least, "at least");
      part(item.more_from_13_persons, "more from 13 persons");
      facts += fmt::format("\n    {}: {}", item.item, rule);
    }
    out += entry(pack.key, pack.title, facts, pack.source);
  }
  return out;
}

std::string ensembles() {
  std::string out = "ENSEMBLES (head, trunk, arms, hands, legs, feet)\n";
  for (const scenario::Ensemble& each : scenario::catalogue().ensembles) {
    const auto row = [](const char* name, const std::array<double, 6>& values, const char* unit) {
      std::string line = name;
      for (const double value : values) line += fmt::format(" {:g}", value);
      return line + unit;
    };
    out += entry(
        each.key, each.title,
        row("covered", each.covered_fraction, "\n  ") +
            row("insulation", each.insulation_m2K_W, " m2 K/W\n  ") + row("mass", each.mass_kg, " kg\n  ") +
            row("water held", each.water_capacity_kg, " kg\n  ") +
            fmt::format("i_m {:g}, {} when immersed, in the water {:g} m2 K/W",
                        each.vapour_permeability_index, each.waterproof ? "dry inside" : "wet inside",
                        each.immersed_insulation_m2K_W),
        each.source);
  }
  return out;
}

std::string coverings(const char* title, const std::vector<scenario::Covering>& all) {
  std::string out = std::string(title) + "\n";
  for (const scenario::Covering& each : all)
    out +=
        entry(each.key, each.title,
              fmt::format("covered {:g}, insulation {:g} m2 K/W, mass {:g} kg, water held {:g} kg",
                          each.covered_fraction, each.insulation_m2K_W, each.mass_kg, each.water_capacity_kg),
              each.source);
  return out;
}

std::string items() {
  std::string out = "ITEMS\n";
  for (const scenario::ItemKind& item : scenario::catalogue().items) {
    std::string facts = fmt::format("role {}", scenario::word(item.role));
    const auto part = [&](double value, const char* words) {
      if (value > 0) facts += fmt::format(", {:g} {}", value, words);
    };
    part(item.water_L, "L");
    part(item.energy_kJ, "kJ");
    part(item.carbohydrate_g, "g carbohydrate");
    part(item.fat_g, "g fat");
    part(item.protein_g, "g protein");
    part(item.holds_L, "L of rain");
    part(item.output_L_h, item.role == scenario::ItemRole::solar_still ? "L/MJ" : "L/h");
    part(item.area_m2, "m2");
    part(item.work_W, "W of work");
    part(item.burn_s, "s burning");
    part(item.hours, "h");
    part(item.bail_L, "L a time");
    part(item.mass_kg, "kg");
    out += entry(item.key, item.title, facts, item.source);
  }
  return out;
}

std::string seas() {
  std::string out = "SEAS\n";
  for (const scenario::SeaArea& area : scenario::sea_areas().sea_areas)
    out += fmt::format("{:<28} {:g},{:g}\n", area.title, area.latitude_deg, area.longitude_deg);
  return out + fmt::format("  source: {}\n", scenario::sea_areas().source);
}

int show(const std::string& part, bool json) {
  if (json) return put(scenario::write_catalogue(part), "", false);
  std::string text;
  if (part.empty() || part == "rafts") text += rafts();
  if (part.empty() || part == "packs") text += packs();
  if (part.empty() || part == "ensembles") text += ensembles();
  if (part.empty() || part == "gloves") text += coverings("GLOVES", scenario::catalogue().gloves);
  if (part.empty() || part == "boots") text += coverings("BOOTS", scenario::catalogue().boots);
  if (part.empty() || part == "items") text += items();
  if (part.empty() || part == "seas") text += seas();
  text += fmt::format("\n{}\n{}\n", standing_notice, standing_advice);
  return put(shown(text), "", false);
}

}  // namespace

void add_catalogue(Program& program) {
  auto part = std::make_shared<std::string>();
  auto json = std::make_shared<bool>(false);
  Command command =
      program.command("catalogue", "List rafts, packs, clothing, items and seas, each with its source");
  command.word("part", *part, {"rafts", "packs", "ensembles", "gloves", "boots", "items", "seas"},
               "rafts, packs, ensembles, gloves, boots, items or seas; all if left out");
  command.flag("--json", *json, "As JSON");
  command.does([part, json] { return show(*part, *json); });
}

}  // namespace bide::tool
