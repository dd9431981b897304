// JSON Schema 2020-12 from describe(): one definition per struct.
#include "bide/core/notice.hpp"
#include "bide/scenario/describe_study.hpp"
#include "bide/scenario/write.hpp"
#include "bide/scenario/writer.hpp"

namespace bide::scenario {
namespace {

template <class S>
constexpr const char* definition_name = nullptr;
template <>
constexpr const char* definition_name<Position> = "position";
template <>
constexpr const char* definition_name<WeatherFallback> = "weather_fallback";
template <>
constexpr const char* definition_name<Weather> = "weather";
template <>
constexpr const char* definition_name<Raft> = "raft";
template <>
constexpr const char* definition_name<Person> = "person";
template <>
constexpr const char* definition_name<Boarding> = "boarding";
template <>
constexpr const char* definition_name<Item> = "item";
template <>
constexpr const char* definition_name<Stores> = "stores";
template <>
constexpr const char* definition_name<Rationing> = "rationing";
template <>
constexpr const char* definition_name<Routine> = "routine";
template <>
constexpr const char* definition_name<Failure> = "failure";
template <>
constexpr const char* definition_name<Limits> = "limits";
template <>
constexpr const char* definition_name<Model> = "model";
template <>
constexpr const char* definition_name<Distribution> = "distribution";
template <>
constexpr const char* definition_name<SharedInput> = "shared_input";
template <>
constexpr const char* definition_name<Together> = "together";
template <>
constexpr const char* definition_name<Alternative> = "alternative";
template <>
constexpr const char* definition_name<UncertainFailure> = "uncertain_failure";
template <>
constexpr const char* definition_name<UnknownPerson> = "unknown_person";
template <>
constexpr const char* definition_name<HeldBackAbove> = "held_back_above";
template <>
constexpr const char* definition_name<Rescue> = "rescue";
template <>
constexpr const char* definition_name<Known> = "known";
template <>
constexpr const char* definition_name<Uncertain> = "uncertain";
template <>
constexpr const char* definition_name<DesignGroup> = "design_group";
template <>
constexpr const char* definition_name<Design> = "design";

template <class S>
Json object_schema(Json& definitions);
template <class T>
Json member_schema(const Field& field, Json& definitions);

template <class T>
Json reference(Json& definitions) {
  const std::string name = definition_name<T>;
  if (!definitions.contains(name)) {
    definitions[name] = Json::object();  // holds the place in file order
    definitions[name] = object_schema<T>(definitions);
  }
  return {{"$ref", "#/$defs/" + name}};
}

template <class T>
Json entry_schema(Json& definitions) {
  if constexpr (detail::is_described<T>)
    return reference<T>(definitions);
  else if constexpr (std::is_same_v<T, Value>)
    return {{"type", {"number", "boolean", "string", "null"}}};
  else
    return member_schema<T>(detail::entry_field<T>(), definitions);
}

template <class T>
Json member_schema(const Field& field, Json& definitions) {
  Json out = Json::object();
  if constexpr (std::is_same_v<T, bool>) {
    out["type"] = "boolean";
  } else if constexpr (std::is_arithmetic_v<T>) {
    out["type"] = std::is_integral_v<T> ? "integer" : "number";
    out["minimum"] = field.low;
    out["maximum"] = field.high;
  } else if constexpr (std::is_same_v<T, std::string>) {
    out["type"] = "string";
    out["maxLength"] = static_cast<int>(field.high);
  } else if constexpr (std::is_enum_v<T>) {
    out["enum"] = Json::array();
    for (const std::string_view each : words_of<T>) out["enum"].push_back(std::string(each));
  } else if constexpr (detail::is_list<T>) {
    out["type"] = "array";
    out["minItems"] = static_cast<int>(field.low);
    out["maxItems"] = static_cast<int>(field.high);
    out["items"] = entry_schema<typename T::value_type>(definitions);
  } else if constexpr (detail::is_named<T>) {
    using Entry = decltype(T{}.entries.front().second);
    out["type"] = "object";
    out["additionalProperties"] = entry_schema<std::remove_cvref_t<Entry>>(definitions);
  } else {
    out = reference<T>(definitions);
  }
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

template <class S>
Json object_schema(Json& definitions) {
  Json properties = Json::object(), needed = Json::array();
  describe(As<S>{}, [&](auto member, const Field& field) {
    using T = Plain<std::remove_cvref_t<decltype(std::declval<S&>().*member)>>;
    properties[std::string(field.key)] = member_schema<T>(field, definitions);
    if (field.absent.kind == Absent::Kind::required) needed.push_back(std::string(field.key));
  });
  Json out = {{"type", "object"}, {"properties", properties}};
  if (!needed.empty()) out["required"] = needed;
  out["additionalProperties"] = false;
  return out;
}

template <class S>
std::string schema_of(const char* title, std::string_view format) {
  Json definitions = Json::object();
  Json root = object_schema<S>(definitions);
  root["properties"]["format"]["const"] = std::string(format);
  Json out = {{"$schema", "https://json-schema.org/draft/2020-12/schema"}, {"title", title}};
  out["$comment"] = fmt::format("{} {}", standing_notice, standing_advice);
  out.update(root);
  out["$defs"] = definitions;
  return out.dump(2) + "\n";
}

}  // namespace

std::string json_schema() {
  return schema_of<Scenario>("bide scenario", format_word);
}

std::string study_json_schema() {
  return schema_of<StudyFile>("bide study", study_format_word);
}

}  // namespace bide::scenario
