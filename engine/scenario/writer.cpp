#include "bide/scenario/writer.hpp"

#include <cmath>
#include <cstdint>

#include "bide/scenario/uncertain.hpp"

namespace bide::scenario {
namespace {

using Kind = Shape::Kind;

Json value_to_json(const Value& value) {
  if (const auto* number = std::get_if<double>(&value)) return to_json(*number);
  if (const auto* truth = std::get_if<bool>(&value)) return *truth;
  if (const auto* word = std::get_if<std::string>(&value)) return *word;
  return nullptr;
}

Json parts_to_json(const Shape& shape, const void* from) {
  Json out = Json::object();
  for (const Part& part : shape.parts) {
    const void* value = part.value_in(from);
    if (!value) continue;
    const Shape& of = *part.shape;
    const bool may_be_empty =
        of.kind == Kind::named || (of.kind == Kind::list && part.field.absent.kind != Absent::Kind::required);
    if (may_be_empty && of.size(value) == 0) continue;
    out[std::string(part.field.key)] = to_json(of, value);
  }
  return out;
}

}  // namespace

Json to_json(double number) {
  constexpr double exact = 1e15;  // whole numbers below this are written without ".0"
  if (number == std::floor(number) && std::abs(number) < exact) return static_cast<std::int64_t>(number);
  return number;
}

Json to_json(const Shape& shape, const void* value) {
  switch (shape.kind) {
    case Kind::truth:
      return as<bool>(value);
    case Kind::whole:
      return as<int>(value);
    case Kind::number:
      return to_json(as<double>(value));
    case Kind::text:
      return as<std::string>(value);
    case Kind::word:
      return std::string(shape.words[shape.word_index(value)]);
    case Kind::value:
      return value_to_json(as<Value>(value));
    case Kind::numbers:
    case Kind::list: {
      Json out = Json::array();
      for (std::size_t i = 0; i < shape.size(value); ++i)
        out.push_back(to_json(*shape.entry, shape.at_const(value, i)));
      return out;
    }
    case Kind::named: {
      Json out = Json::object();
      for (std::size_t i = 0; i < shape.size(value); ++i)
        out[shape.key_at(const_cast<void*>(value), i)] = to_json(*shape.entry, shape.at_const(value, i));
      return out;
    }
    case Kind::parts:
      break;
  }
  return parts_to_json(shape, value);
}

}  // namespace bide::scenario
