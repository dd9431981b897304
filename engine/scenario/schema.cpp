// JSON Schema 2020-12 from describe(): one definition per struct.
#include <fmt/format.h>

#include "bide/core/notice.hpp"
#include "bide/scenario/study_file.hpp"
#include "bide/scenario/words.hpp"
#include "bide/scenario/write.hpp"
#include "bide/scenario/writer.hpp"

namespace bide::scenario {
namespace {

using Kind = Shape::Kind;

Json object_schema(const Shape& shape, Json& definitions);
Json member_schema(const Shape& shape, const Field& field, Json& definitions);

Json reference(const Shape& shape, Json& definitions) {
  const std::string name(shape.name);
  if (!definitions.contains(name)) {
    definitions[name] = Json::object();  // holds the place in file order
    definitions[name] = object_schema(shape, definitions);
  }
  return {{"$ref", "#/$defs/" + name}};
}

Json entry_schema(const Shape& entry, Json& definitions) {
  if (entry.kind == Kind::parts) return reference(entry, definitions);
  if (entry.kind == Kind::value) return {{"type", {"number", "boolean", "string", "null"}}};
  return member_schema(entry, entry_field(entry), definitions);
}

Json type_schema(const Shape& shape, const Field& field, Json& definitions) {
  switch (shape.kind) {
    case Kind::truth:
      return {{"type", "boolean"}};
    case Kind::whole:
    case Kind::number:
      return {{"type", shape.kind == Kind::whole ? "integer" : "number"},
              {"minimum", field.low},
              {"maximum", field.high}};
    case Kind::text:
      return {{"type", "string"}, {"maxLength", static_cast<int>(field.high)}};
    case Kind::word: {
      Json words = Json::array();
      for (const std::string_view each : shape.words) words.push_back(std::string(each));
      return {{"enum", words}};
    }
    case Kind::numbers:
    case Kind::list:
      return {{"type", "array"},
              {"minItems", static_cast<int>(field.low)},
              {"maxItems", static_cast<int>(field.high)},
              {"items", entry_schema(*shape.entry, definitions)}};
    case Kind::named:
      return {{"type", "object"},
              {"maxProperties", static_cast<int>(field.high)},
              {"additionalProperties", entry_schema(*shape.entry, definitions)}};
    case Kind::value:
    case Kind::parts:
      break;
  }
  return reference(shape, definitions);
}

Json member_schema(const Shape& shape, const Field& field, Json& definitions) {
  Json out = type_schema(shape, field, definitions);
  std::string sentence(field.sentence);
  if (!field.unit.empty()) sentence += fmt::format(" Unit: {}.", field.unit);
  const Absent& absent = field.absent;
  if (absent.kind == Absent::Kind::rule) sentence += fmt::format(" Default: {}.", absent.words);
  if (absent.kind == Absent::Kind::empty) sentence += fmt::format(" If left out: {}.", absent.words);
  if (!sentence.empty()) out["description"] = sentence;
  if (absent.kind == Absent::Kind::number) out["default"] = absent.number;
  if (absent.kind == Absent::Kind::truth) out["default"] = absent.truth;
  if (absent.kind == Absent::Kind::word) out["default"] = std::string(absent.words);
  return out;
}

Json object_schema(const Shape& shape, Json& definitions) {
  Json properties = Json::object(), needed = Json::array();
  for (const Part& part : shape.parts) {
    const std::string key(part.field.key);
    properties[key] = member_schema(*part.shape, part.field, definitions);
    if (part.field.absent.kind == Absent::Kind::required) needed.push_back(key);
  }
  Json out = {{"type", "object"}, {"properties", properties}};
  if (!needed.empty()) out["required"] = needed;
  out["additionalProperties"] = false;
  return out;
}

std::string schema_of(const Shape& shape, const char* title, std::string_view format) {
  Json definitions = Json::object();
  Json root = object_schema(shape, definitions);
  root["properties"]["format"]["const"] = std::string(format);
  Json out = {{"$schema", "https://json-schema.org/draft/2020-12/schema"}, {"title", title}};
  out["$comment"] = fmt::format("{} {}", standing_notice, standing_advice);
  out.update(root);
  out["$defs"] = definitions;
  return out.dump(2) + "\n";
}

}  // namespace

std::string json_schema() {
  return schema_of(shape_of<Scenario>(), "bide scenario", format_word);
}

std::string study_json_schema() {
  return schema_of(shape_of<StudyFile>(), "bide study", study_format_word);
}

}  // namespace bide::scenario
