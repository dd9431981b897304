#include <fmt/format.h>
#include <fmt/ranges.h>

#include <type_traits>

#include "bide/scenario/describe_levers.hpp"
#include "bide/scenario/describe_priors.hpp"
#include "bide/scenario/describe_study.hpp"
#include "bide/scenario/shape.hpp"
#include "bide/scenario/words.hpp"

namespace bide::scenario {
namespace {

template <class S>
constexpr std::string_view name_of = {};
template <>
constexpr std::string_view name_of<Position> = "position";
template <>
constexpr std::string_view name_of<WeatherFallback> = "weather_fallback";
template <>
constexpr std::string_view name_of<Weather> = "weather";
template <>
constexpr std::string_view name_of<Raft> = "raft";
template <>
constexpr std::string_view name_of<Person> = "person";
template <>
constexpr std::string_view name_of<Boarding> = "boarding";
template <>
constexpr std::string_view name_of<Item> = "item";
template <>
constexpr std::string_view name_of<Stores> = "stores";
template <>
constexpr std::string_view name_of<Rationing> = "rationing";
template <>
constexpr std::string_view name_of<Routine> = "routine";
template <>
constexpr std::string_view name_of<Failure> = "failure";
template <>
constexpr std::string_view name_of<Limits> = "limits";
template <>
constexpr std::string_view name_of<Model> = "model";
template <>
constexpr std::string_view name_of<Distribution> = "distribution";
template <>
constexpr std::string_view name_of<SharedInput> = "shared_input";
template <>
constexpr std::string_view name_of<Together> = "together";
template <>
constexpr std::string_view name_of<Alternative> = "alternative";
template <>
constexpr std::string_view name_of<UncertainFailure> = "uncertain_failure";
template <>
constexpr std::string_view name_of<UnknownPerson> = "unknown_person";
template <>
constexpr std::string_view name_of<HeldBackAbove> = "held_back_above";
template <>
constexpr std::string_view name_of<Readiness> = "readiness";
template <>
constexpr std::string_view name_of<RaftChances> = "raft_chances";
template <>
constexpr std::string_view name_of<Launch> = "launch";
template <>
constexpr std::string_view name_of<FirstMinutes> = "first_minutes";
template <>
constexpr std::string_view name_of<Rescue> = "rescue";
template <>
constexpr std::string_view name_of<Known> = "known";
template <>
constexpr std::string_view name_of<Uncertain> = "uncertain";
template <>
constexpr std::string_view name_of<DesignGroup> = "design_group";
template <>
constexpr std::string_view name_of<Design> = "design";

template <class T>
struct Without {  // its optional
  using type = T;
  static const void* look(const void* member) { return member; }
  static void* engage(void* member) { return member; }
};
template <class T>
struct Without<std::optional<T>> {
  using type = T;
  static const void* look(const void* member) {
    const auto& slot = as<std::optional<T>>(member);
    return slot ? &*slot : nullptr;
  }
  static void* engage(void* member) {
    auto& slot = as<std::optional<T>>(member);
    return slot ? &*slot : &slot.emplace();
  }
};

template <class T>
inline constexpr bool is_list = false;
template <class T>
inline constexpr bool is_list<std::vector<T>> = true;
template <class T>
inline constexpr bool is_numbers = false;
template <std::size_t N>
inline constexpr bool is_numbers<std::array<double, N>> = true;
template <class T>
inline constexpr bool is_named = false;
template <class T>
inline constexpr bool is_named<Named<T>> = true;

template <class S, class M>
std::ptrdiff_t offset_of(M S::*member) {
  static const S sample{};
  const void* at = &(sample.*member);
  const void* start = &sample;
  return static_cast<const char*>(at) - static_cast<const char*>(start);
}

template <class S>
std::vector<Part> parts_of() {
  std::vector<Part> out;
  describe(As<S>{}, [&]<class M>(M S::*member, const Field& field) {
    using Slot = Without<M>;
    out.push_back({field, &shape_of<typename Slot::type>(), offset_of(member), &Slot::look, &Slot::engage});
  });
  return out;
}

template <class T>
Shape make_shape() {
  Shape out;
  if constexpr (std::is_same_v<T, bool>) {
    out.kind = Shape::Kind::truth;
  } else if constexpr (std::is_same_v<T, int>) {
    out.kind = Shape::Kind::whole;
  } else if constexpr (std::is_same_v<T, double>) {
    out.kind = Shape::Kind::number;
  } else if constexpr (std::is_same_v<T, std::string>) {
    out.kind = Shape::Kind::text;
  } else if constexpr (std::is_same_v<T, Value>) {
    out.kind = Shape::Kind::value;
  } else if constexpr (std::is_enum_v<T>) {
    out.kind = Shape::Kind::word;
    out.words = words_of<T>;
    out.word_index = [](const void* value) { return static_cast<std::size_t>(as<T>(value)); };
    out.set_word = [](void* value, std::size_t index) { as<T>(value) = static_cast<T>(index); };
  } else if constexpr (is_numbers<T>) {
    out.kind = Shape::Kind::numbers;
    out.entry = &shape_of<double>();
    out.size = [](const void*) { return std::tuple_size_v<T>; };
    out.at = [](void* list, std::size_t i) -> void* { return &as<T>(list)[i]; };
  } else if constexpr (is_list<T>) {
    out.kind = Shape::Kind::list;
    out.entry = &shape_of<typename T::value_type>();
    out.size = [](const void* list) { return as<T>(list).size(); };
    out.resize = [](void* list, std::size_t size) { as<T>(list).resize(size); };
    out.at = [](void* list, std::size_t i) -> void* { return &as<T>(list)[i]; };
  } else if constexpr (is_named<T>) {
    out.kind = Shape::Kind::named;
    out.entry = &shape_of<decltype(T{}.entries.front().second)>();
    out.size = [](const void* list) { return as<T>(list).entries.size(); };
    out.resize = [](void* list, std::size_t size) { as<T>(list).entries.resize(size); };
    out.at = [](void* list, std::size_t i) -> void* { return &as<T>(list).entries[i].second; };
    out.key_at = [](void* list, std::size_t i) -> std::string& { return as<T>(list).entries[i].first; };
  } else {
    out.kind = Shape::Kind::parts;
    out.name = name_of<T>;
    out.parts = parts_of<T>();
  }
  return out;
}

}  // namespace

template <class T>
const Shape& shape_of() {
  static const Shape shape = make_shape<T>();
  return shape;
}
template const Shape& shape_of<Scenario>();
template const Shape& shape_of<StudyFile>();
template const Shape& shape_of<Catalogue>();
template const Shape& shape_of<SeaAreas>();
template const Shape& shape_of<LeverList>();
template const Shape& shape_of<Priors>();
template const Shape& shape_of<Uncertain>();

std::string range_words(const Field& field) {
  const bool plain = field.unit.empty() || field.unit == "1";
  return fmt::format("{} to {}{}{}", field.low, field.high, plain ? "" : " ", plain ? "" : field.unit);
}

std::string joined(std::span<const std::string_view> words) {
  return fmt::format("{}", fmt::join(words.begin(), words.end(), ", "));
}

std::string allowed_words(const Shape& shape, const Field& field) {
  switch (shape.kind) {
    case Shape::Kind::truth:
      return "true or false";
    case Shape::Kind::whole:
      return "a whole number from " + range_words(field);
    case Shape::Kind::number:
      return "a number from " + range_words(field);
    case Shape::Kind::text:
      return fmt::format("a string of at most {} bytes", field.high);
    case Shape::Kind::word:
      return joined(shape.words);
    case Shape::Kind::value:
      return "a number, a word, true, false or null";
    case Shape::Kind::numbers:
      return fmt::format("an array of {} numbers from {}", shape.size(nullptr), range_words(field));
    case Shape::Kind::list:
      return fmt::format("an array of {} to {} entries", field.low, field.high);
    case Shape::Kind::named:
      return fmt::format("an object of at most {} members", field.high);
    case Shape::Kind::parts:
      break;
  }
  return "an object";
}

Field entry_field(const Shape& entry) {
  if (entry.kind == Shape::Kind::text) return text({}, required, {});
  return number({}, {}, -largest_stated, largest_stated, required, {});
}

}  // namespace bide::scenario
