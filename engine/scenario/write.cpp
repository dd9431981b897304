#include "bide/scenario/write.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "bide/core/notice.hpp"
#include "bide/core/printable.hpp"
#include "bide/scenario/document.hpp"
#include "bide/scenario/sea_areas.hpp"
#include "bide/scenario/writer.hpp"

namespace bide::scenario {
namespace {

std::string absent_words(const Absent& absent) {
  switch (absent.kind) {
    case Absent::Kind::required:
      return "required";
    case Absent::Kind::number:
      return fmt::format("{}", absent.number);
    case Absent::Kind::truth:
      return absent.truth ? "true" : "false";
    case Absent::Kind::word:
    case Absent::Kind::rule:
      return std::string(absent.words);
    case Absent::Kind::empty:
      return "may be left out: " + std::string(absent.words);
  }
  return {};
}

using Holds = FieldLine::Holds;

Holds holds_of(const Shape& shape) {
  switch (shape.kind) {
    case Shape::Kind::truth:
      return Holds::truth;
    case Shape::Kind::whole:
      return Holds::whole;
    case Shape::Kind::number:
      return Holds::number;
    case Shape::Kind::text:
      return Holds::text;
    case Shape::Kind::word:
      return Holds::word;
    default:
      return Holds::parts;
  }
}

void add_lines(const Shape& owner, const std::string& pointer, std::vector<FieldLine>& lines) {
  for (const Part& part : owner.parts) {
    const Field& field = part.field;
    const Shape* shape = part.shape;
    const std::string here = child(pointer, field.key);
    FieldLine line{here, std::string(field.unit), allowed_words(*shape, field), absent_words(field.absent),
                   std::string(field.sentence)};
    line.holds = holds_of(*shape);
    if (shape->is_number()) line.is_number = true, line.low = field.low, line.high = field.high;
    line.words.assign(shape->words.begin(), shape->words.end());
    lines.push_back(line);
    if (shape->kind == Shape::Kind::parts)
      add_lines(*shape, here, lines);
    else if (shape->entry && shape->entry->kind == Shape::Kind::parts)
      add_lines(*shape->entry, here + "/*", lines);
  }
}

struct Lister {
  std::vector<FieldLine> fields = field_lines();
  const std::vector<std::string>& defaults;
  std::string out;

  void list(const Json& node, const std::string& pointer, int depth) {
    const std::string indent(static_cast<std::size_t>(2 * depth), ' ');
    std::size_t index = 0;
    for (const auto& [key, value] : node.items()) {
      const std::string here = node.is_array() ? child(pointer, index++) : child(pointer, key);
      const std::string name = node.is_array() ? key : "\"" + key + "\"";
      if (value.is_structured()) {
        out += fmt::format("{}{}: {}\n", indent, name, value.empty() ? "[]" : value.is_array() ? "[" : "{");
        list(value, here, depth + 1);
        if (!value.empty()) out += indent + (value.is_array() ? "]\n" : "}\n");
        continue;
      }
      const auto field =
          std::find_if(fields.begin(), fields.end(),
                       [&, any = any_index(here)](const FieldLine& f) { return f.pointer == any; });
      const std::string unit =
          field == fields.end() || field->unit.empty() || field->unit == "1" ? "" : " " + field->unit;
      const bool filled = std::find(defaults.begin(), defaults.end(), here) != defaults.end();
      const std::string shown =
          value.is_number() ? fmt::format("{:.6g}", value.get<double>()) : printable(value.dump());
      out += fmt::format("{}{}: {}{}{}\n", indent, name, shown, unit, filled ? "  (default)" : "");
    }
  }
};

}  // namespace

std::string any_index(const std::string& pointer) {
  std::string out;
  for (std::size_t i = 0; i < pointer.size();) {
    const std::size_t end = std::min(pointer.find('/', i + 1), pointer.size());
    const std::string part = pointer.substr(i, end - i);
    out += part.find_first_not_of("/0123456789") == std::string::npos ? "/*" : part;
    i = end;
  }
  return out;
}

std::vector<FieldLine> field_lines() {
  std::vector<FieldLine> lines;
  add_lines(shape_of<Scenario>(), "", lines);
  return lines;
}

std::string write_scenario(const Scenario& scenario) {
  return object_to_json(scenario).dump(2) + "\n";
}

std::string write_catalogue(std::string_view part) {
  const Json all = object_to_json(catalogue());
  Json out = {{"notice", fmt::format("{} {}", standing_notice, standing_advice)}};
  for (const auto& [name, entries] : all.items())
    if (part.empty() || part == name) out[name] = entries;
  if (part.empty() || part == "seas") out["seas"] = object_to_json(sea_areas());
  return out.dump(2) + "\n";
}

std::string listing(const ValidScenario& valid) {
  Lister lister{.defaults = valid.defaults, .out = {}};
  lister.list(object_to_json(valid.scenario), "", 0);
  std::string& out = lister.out;
  const auto stock = [&](std::string_view title, const std::vector<StockItem>& items) {
    if (items.empty()) return;
    out += fmt::format("{}:\n", title);
    for (const StockItem& item : items)
      out += fmt::format("  {:>6.6g}  {}\n", item.quantity, item.kind->title);
  };
  stock("Aboard", valid.stock);
  stock("Expired, counted as absent", valid.expired);
  return out;
}

bool is_default(const ValidScenario& scenario, std::string_view pointer) {
  return std::find(scenario.defaults.begin(), scenario.defaults.end(), pointer) != scenario.defaults.end();
}

}  // namespace bide::scenario
