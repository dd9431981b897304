// From the structs to JSON, by their shapes; what is empty is left out. Only inside this folder: others call
// the functions of write.hpp, which give text.
#pragma once

#include <nlohmann/json.hpp>

#include "bide/scenario/shape.hpp"

namespace bide::scenario {

using Json = nlohmann::ordered_json;

Json to_json(double number);
Json to_json(const Shape& shape, const void* value);

template <class S>
Json object_to_json(const S& from) {
  return to_json(shape_of<S>(), &from);
}

}  // namespace bide::scenario
