#include "bide/study/records/sample_bytes.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <boost/endian/conversion.hpp>
#include <cmath>
#include <cstring>
#include <stdexcept>

namespace bide::study {

namespace {

enum class State : unsigned char { made = 1, failed = 2 };

template <class Person, class Visit>
void each_number(Person& p, Visit visit) {
  for (auto* number :
       {&p.able_until_s, &p.alive_until_s, &p.unconscious_s, &p.next_margin_fraction, &p.lowest_core_degC,
        &p.highest_core_degC, &p.lowest_finger_degC, &p.worst_water_deficit_pct, &p.worst_osmolality_mOsm_kg,
        &p.hands_h, &p.shivering_h, &p.cold_feet_h})
    visit(*number);
  for (auto& term : p.balance) visit(term);
}
template <class Person, class Visit>
void each_cause(Person& p, Visit visit) {
  for (auto* cause : {&p.able_cause, &p.alive_cause, &p.next_cause}) visit(*cause);
}
template <class Result, class Visit>
void each_crew_number(Result& r, Visit visit) {
  for (auto* number : {&r.horizon_s, &r.coldest_inside_degC, &r.warmest_inside_degC, &r.mean_inside_degC,
                       &r.highest_co2_ppm, &r.co2_above_5000_ppm_h, &r.co2_above_15000_ppm_h,
                       &r.co2_above_30000_ppm_h, &r.water_out_s, &r.food_out_s, &r.water_left_L})
    visit(*number);
  for (auto& time : r.near_s) visit(time);
}

constexpr std::size_t state_bytes = 1, number_bytes = sizeof(double), cause_bytes = 1;

[[noreturn]] void refuse(const std::string& why) {
  throw std::invalid_argument(why);
}

// What sorts and sums them takes for granted.
void check_numbers(SampleResult& result) {
  const auto time = [](double s) {
    if (!(s >= 0)) refuse(fmt::format("found {} s as a time; allowed 0 or more", s));
  };
  for (const double s : {result.horizon_s, result.water_out_s, result.food_out_s}) time(s);
  for (const double s : result.near_s) time(s);
  for (PersonResult& person : result.persons) {
    for (const double s : {person.able_until_s, person.alive_until_s, person.unconscious_s}) time(s);
    each_number(person, [](double value) {
      if (std::isnan(value)) refuse("a person's figure is no number");
    });
  }
}

}  // namespace

std::size_t sample_bytes(std::size_t persons) {
  std::size_t bytes = state_bytes;
  SampleResult result;
  PersonResult person;
  each_crew_number(result, [&](double) { bytes += number_bytes; });
  each_number(person, [&](double) { bytes += persons * number_bytes; });
  each_cause(person, [&](system::Limit) { bytes += persons * cause_bytes; });
  return bytes;
}

std::size_t persons_of(std::size_t bytes) {
  const std::size_t nobody = sample_bytes(0), each = sample_bytes(1) - nobody;
  return bytes < nobody ? 0 : (bytes - nobody) / each;
}

void write_sample(const SampleResult& result, std::span<std::byte> out) {
  std::fill(out.begin(), out.end(), std::byte{0});
  const bool failed = !result.failure.empty();
  out[0] = static_cast<std::byte>(failed ? State::failed : State::made);
  if (failed) {
    std::memcpy(out.data() + state_bytes, result.failure.data(),
                std::min(result.failure.size(), out.size() - state_bytes));
    return;
  }
  if (out.size() != sample_bytes(result.persons.size()))
    throw std::invalid_argument("write_sample: the room is not that of the persons");
  std::size_t at = state_bytes;
  const auto number = [&](double value) {
    std::uint64_t bits;
    std::memcpy(&bits, &value, sizeof bits);
    boost::endian::native_to_little_inplace(bits);
    std::memcpy(out.data() + at, &bits, sizeof bits);
    at += number_bytes;
  };
  each_crew_number(result, number);
  for (const PersonResult& person : result.persons) {
    each_number(person, number);
    each_cause(person, [&](system::Limit cause) { out[at++] = static_cast<std::byte>(cause); });
  }
}

SampleResult read_sample(std::uint64_t index, std::size_t persons, std::span<const std::byte> bytes) {
  if (bytes.size() != sample_bytes(persons))
    throw std::invalid_argument("read_sample: the record has another size");
  SampleResult result;
  result.index = index;
  if (bytes[0] == static_cast<std::byte>(State::failed)) {
    const auto text = bytes.subspan(state_bytes);
    const auto end = std::find(text.begin(), text.end(), std::byte{0});
    for (auto each = text.begin(); each != end; ++each) result.failure += static_cast<char>(*each);
    if (result.failure.empty()) refuse("it failed for no reason");
    if (std::any_of(end, text.end(), [](std::byte each) { return each != std::byte{0}; }))
      refuse("something stands after the reason of its failure");
    return result;
  }
  if (bytes[0] != static_cast<std::byte>(State::made)) refuse("it has neither figures nor a failure");
  std::size_t at = state_bytes;
  const auto number = [&](double& value) {
    std::uint64_t bits;
    std::memcpy(&bits, bytes.data() + at, sizeof bits);
    boost::endian::little_to_native_inplace(bits);
    std::memcpy(&value, &bits, sizeof bits);
    at += number_bytes;
  };
  each_crew_number(result, number);
  result.persons.resize(persons);
  for (PersonResult& person : result.persons) {
    each_number(person, number);
    each_cause(person, [&](system::Limit& cause) {
      const auto held = static_cast<unsigned char>(bytes[at++]);
      constexpr auto last_cause = static_cast<unsigned char>(system::Limit::none);
      if (held > last_cause) refuse(fmt::format("found {} as a cause; allowed 0 to {}", +held, +last_cause));
      cause = static_cast<system::Limit>(held);
    });
  }
  check_numbers(result);
  return result;
}

}  // namespace bide::study
