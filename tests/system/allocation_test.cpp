// A step takes no memory: operator new of this program counts.
#include <doctest/doctest.h>

#include <array>
#include <cstdlib>
#include <new>

#include "bide/march/sdirk2.hpp"
#include "bide/system/gather.hpp"
#include "bide/system/system.hpp"
#include "support/runs.hpp"

namespace {
long allocations = 0;

void* counted(std::size_t size, std::size_t alignment) {
  ++allocations;
  void* p = alignment == 0 ? std::malloc(size)
                           : std::aligned_alloc(alignment, (size + alignment - 1) / alignment * alignment);
  if (p == nullptr) throw std::bad_alloc();
  return p;
}
}  // namespace

[[gnu::noinline]] void* operator new(std::size_t size) {
  return counted(size, 0);
}
[[gnu::noinline]] void* operator new[](std::size_t size) {
  return counted(size, 0);
}
[[gnu::noinline]] void* operator new(std::size_t size, std::align_val_t a) {
  return counted(size, static_cast<std::size_t>(a));
}
[[gnu::noinline]] void* operator new[](std::size_t size, std::align_val_t a) {
  return counted(size, static_cast<std::size_t>(a));
}
[[gnu::noinline]] void operator delete(void* p) noexcept {
  std::free(p);
}
[[gnu::noinline]] void operator delete[](void* p) noexcept {
  std::free(p);
}
[[gnu::noinline]] void operator delete(void* p, std::size_t) noexcept {
  std::free(p);
}
[[gnu::noinline]] void operator delete[](void* p, std::size_t) noexcept {
  std::free(p);
}
[[gnu::noinline]] void operator delete(void* p, std::align_val_t) noexcept {
  std::free(p);
}
[[gnu::noinline]] void operator delete[](void* p, std::align_val_t) noexcept {
  std::free(p);
}
[[gnu::noinline]] void operator delete(void* p, std::size_t, std::align_val_t) noexcept {
  std::free(p);
}
[[gnu::noinline]] void operator delete[](void* p, std::size_t, std::align_val_t) noexcept {
  std::free(p);
}

using namespace bide;

namespace {

const std::string four_people = R"({
  "format": "bide scenario 1", "start_time_utc": "2031-02-03T18:00:00Z", "duration_h": 24,
  "position": {"latitude_deg": 49, "longitude_deg": -21},
  "weather": {"kind": "daily_cycle", "air_temperature_degC": 12, "water_temperature_degC": 13,
    "wind_speed_m_s": 9, "rain_mm_h": 0.5, "air_temperature_swing_K": 3, "warmest_hour_local_h": 15},
  "raft": {"kind": "offshore_4"},
  "crew": [{"sex": "female", "age_years": 42, "height_m": 1.68, "mass_kg": 64},
    {"sex": "male", "age_years": 30, "height_m": 1.8, "mass_kg": 82, "already_seasick": true},
    {"sex": "male", "age_years": 55, "height_m": 1.75, "mass_kg": 90},
    {"sex": "female", "age_years": 24, "height_m": 1.62, "mass_kg": 58}],
  "boarding": {"kind": "swim", "minutes_in_water": 10}
})";

template <class T>
long allocations_of_steps(const system::Compiled<T>& compiled, const weather::Record& weather) {
  const system::Forcings<T> forcings(weather);
  system::System<T> system(compiled, forcings);
  std::vector<T> x = system.start();
  march::Sdirk2<T> stepper(x.size());
  stepper.do_step(system, x, 0, 60);
  const long before = allocations;
  for (int i = 1; i < 20; ++i) {
    if (i % 7 == 0) stepper.restart();
    stepper.do_step(system, x, 60.0 * i, 60);
  }
  return allocations - before;
}

}  // namespace

TEST_CASE("twenty steps with four people take no memory") {
  const test::Run run = test::load_run(four_people);
  REQUIRE(run.compiled.persons.size() == 4);
  const long start = allocations;
  REQUIRE(std::vector<double>(100).size() == 100);
  REQUIRE(allocations > start);  // the counter counts
  CHECK(allocations_of_steps(run.compiled, run.weather) == 0);
  std::array<const system::Compiled<double>*, block_width> alike;
  alike.fill(&run.compiled);
  CHECK(allocations_of_steps(system::gather<block_width>(alike), run.weather) == 0);
}
