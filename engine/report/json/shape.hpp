// What a JSON holds, said once: the value that is written and the schema that it obeys come from one list of
// keys.
//
//   const Shape<Person> person = Shape<Person>()
//       .with("mass_kg", [](const Person& p) { return p.mass_kg; }, "with clothes")
//       .part("able_until", until, [](const Person& p) { return p.able; });
//   person.of(someone)   the value
//   person.schema()      JSON Schema 2020-12: every key is required unless it says otherwise, and no other is
//   allowed
#pragma once

#include <concepts>
#include <functional>
#include <initializer_list>
#include <nlohmann/json.hpp>
#include <optional>
#include <string>
#include <string_view>
#include <type_traits>
#include <utility>
#include <vector>

#include "bide/core/notice.hpp"
#include "bide/report/json/text.hpp"
#include "bide/study/records/fingerprint.hpp"

namespace bide::report {

using Json = nlohmann::ordered_json;

// A number as it is, where json_number() would round it to six digits; null when there is none, or none that
// is finite.
struct Exact {
  std::optional<double> value;
};

namespace shapes {

inline Json type(const char* name) {
  return {{"type", name}};
}

template <class V>
struct Held;  // how a value is written, and its schema

template <class V>
requires std::is_convertible_v<V, std::string_view>
struct Held<V> {
  static Json schema() { return type("string"); }
  static Json of(std::string_view text) { return std::string(text); }
};
template <>
struct Held<bool> {
  static Json schema() { return type("boolean"); }
  static Json of(bool truth) { return truth; }
};
template <std::integral V>
requires(!std::same_as<V, bool>) struct Held<V> {
  static Json schema() { return type("integer"); }
  static Json of(V number) { return number; }
};
template <>
struct Held<double> {
  static Json schema() { return {{"type", {"number", "null"}}}; }
  static Json of(double number) { return json_number(number); }
};
template <>
struct Held<Exact> {
  static Json schema() { return Held<double>::schema(); }
  static Json of(const Exact& number) {
    return number.value && std::isfinite(*number.value) ? Json(*number.value) : Json(nullptr);
  }
};
template <class V>
struct Held<std::vector<V>> {
  static Json schema() { return {{"type", "array"}, {"items", Held<V>::schema()}}; }
  static Json of(const std::vector<V>& values) {
    Json out = Json::array();
    for (const V& each : values) out.push_back(Held<V>::of(each));
    return out;
  }
};

// A schema that allows null too.
inline Json or_null(Json schema) {
  Json& kind = schema["type"];
  if (kind.is_string()) kind = Json::array({kind, "null"});
  return schema;
}
template <class V>
struct Held<std::optional<V>> {
  static Json schema() { return or_null(Held<V>::schema()); }
  static Json of(const std::optional<V>& value) { return value ? Held<V>::of(*value) : Json(nullptr); }
};

}  // namespace shapes

// The keys of an object that tells of a T. A T that points at what it tells of is cheap to copy.
template <class T>
class Shape {
 public:
  // A plain value: text, number, truth, a list of such, or null where there may be none.
  // @param value of a T
  template <class Value>
  Shape& with(const char* key, Value value, const char* sentence = "") {
    using Held = shapes::Held<std::remove_cvref_t<std::invoke_result_t<Value, const T&>>>;
    return add(key, Held::schema(), sentence, [value](const T& of) { return Held::of(value(of)); });
  }

  // One of a few words, or null where `value` gives an optional.
  template <class Value>
  Shape& word(const char* key, const std::vector<std::string>& words, Value value,
              const char* sentence = "") {
    using Held = shapes::Held<std::remove_cvref_t<std::invoke_result_t<Value, const T&>>>;
    Json schema = Held::schema();
    schema["enum"] = words;
    if (schema["type"].is_array()) schema["enum"].push_back(nullptr);
    return add(key, schema, sentence, [value](const T& of) { return Held::of(value(of)); });
  }

  // An object of its own; null where `value` gives an optional that is empty.
  template <class U, class Value>
  Shape& part(const char* key, const Shape<U>& shape, Value value, const char* sentence = "") {
    if constexpr (std::is_same_v<std::remove_cvref_t<std::invoke_result_t<Value, const T&>>,
                                 std::optional<U>>)
      return add(key, shapes::or_null(shape.schema()), sentence, [shape, value](const T& of) {
        const std::optional<U> part = value(of);
        return part ? shape.of(*part) : Json(nullptr);
      });
    else
      return add(key, shape.schema(), sentence, [shape, value](const T& of) { return shape.of(value(of)); });
  }

  // A list of objects.
  // @param value a std::vector<U> of a T
  template <class U, class Value>
  Shape& parts(const char* key, const Shape<U>& shape, Value value, const char* sentence = "") {
    return add(key, {{"type", "array"}, {"items", shape.schema()}}, sentence, [shape, value](const T& of) {
      Json out = Json::array();
      for (const U& each : value(of)) out.push_back(shape.of(each));
      return out;
    });
  }

  // Objects by names that are not known beforehand.
  // @param value a std::vector<std::pair<std::string, U>> of a T
  template <class U, class Value>
  Shape& named(const char* key, const Shape<U>& shape, Value value, const char* sentence = "") {
    return add(key, {{"type", "object"}, {"additionalProperties", shape.schema()}}, sentence,
               [shape, value](const T& of) {
                 Json out = Json::object();
                 for (const auto& [name, each] : value(of)) out[name] = shape.of(each);
                 return out;
               });
  }

  // Plain values by names that are not known beforehand.
  // @param value a std::vector<std::pair<std::string, V>> of a T
  template <class Value>
  Shape& named_values(const char* key, Value value, const char* sentence = "") {
    using V = typename std::invoke_result_t<Value, const T&>::value_type::second_type;
    return add(key, {{"type", "object"}, {"additionalProperties", shapes::Held<V>::schema()}}, sentence,
               [value](const T& of) {
                 Json out = Json::object();
                 for (const auto& [name, each] : value(of)) out[name] = shapes::Held<V>::of(each);
                 return out;
               });
  }

  // The keys of another shape among these.
  // @param value a U of a T
  template <class U, class Value>
  Shape& also(const Shape<U>& shape, Value value) {
    for (const auto& key : shape.keys_)
      keys_.push_back({key.name, key.schema, key.always,
                       [one = key.value, value](const T& of) { return one(value(of)); },
                       key.there ? [there = key.there, value](const T& of) { return there(value(of)); }
                                 : std::function<bool(const T&)>()});
    return *this;
  }

  // The key that was added last is there only for some.
  // @param there whether it is, of a T
  Shape& where(std::function<bool(const T&)> there) {
    keys_.back().there = std::move(there);
    keys_.back().always = false;
    return *this;
  }

  Json of(const T& value) const {
    Json out = Json::object();
    for (const Key& key : keys_)
      if (!key.there || key.there(value)) out[key.name] = key.value(value);
    return out;
  }

  Json schema() const {
    Json properties = Json::object(), required = Json::array();
    for (const Key& key : keys_) {
      properties[key.name] = key.schema;
      if (key.always) required.push_back(key.name);
    }
    return {{"type", "object"},
            {"properties", properties},
            {"required", required},
            {"additionalProperties", false}};
  }

  // As the schema of a whole file.
  std::string schema_text(const char* title) const {
    Json whole;
    whole["$schema"] = "https://json-schema.org/draft/2020-12/schema";
    whole["title"] = title;
    const Json own = schema();
    for (const auto& item : own.items()) whole[item.key()] = item.value();
    return whole.dump(1) + "\n";
  }

 private:
  template <class U>
  friend class Shape;

  struct Key {
    std::string name;
    Json schema;
    bool always = true;
    std::function<Json(const T&)> value;
    std::function<bool(const T&)> there;  // empty: always
  };

  Shape& add(const char* key, Json schema, const char* sentence, std::function<Json(const T&)> value) {
    if (*sentence) schema["description"] = sentence;
    keys_.push_back({key, std::move(schema), true, std::move(value), {}});
    return *this;
  }

  std::vector<Key> keys_;
};

inline const Shape<study::Build>& build_shape() {
  static const Shape<study::Build> shape =
      Shape<study::Build>()
          .with("version", [](const study::Build& b) { return b.version; })
          .with(
              "fingerprint", [](const study::Build& b) { return b.fingerprint; },
              "of the model: equal for builds of equal bits")
          .with("compiler", [](const study::Build& b) { return b.compiler; })
          .with("instruction_set", [](const study::Build& b) { return b.instruction_set; });
  return shape;
}

// What every result begins with.
// @param format its name and version; changes when a key changes its meaning
template <class T>
Shape<T> result_shape(const char* format) {
  Shape<T> out;
  out.word("format", {format}, [format](const T&) { return format; })
      .with("notice",
            [](const T&) {
              return std::vector<std::string_view>{standing_notice, standing_advice};
            })
      .part("made_by", build_shape(), [](const T&) { return study::build(); });
  return out;
}

}  // namespace bide::report
