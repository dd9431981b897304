// At what pace hands do their tasks.
#include "bide/system/tasks.hpp"

#include <doctest/doctest.h>

#include <array>

#include "bide/core/scalar.hpp"

using namespace bide;
using system::Task;

namespace {

template <class T>
struct Hands {
  body::Build<T> build{};
  std::array<T, body::at::count> y{};

  Hands(T finger_degC, T hand_degC) {
    build.fine_work = build.grip = T(1);
    y[body::at::finger] = finger_degC;
    y[static_cast<std::size_t>(body::at::node(body::hands, body::skin))] = hand_degC;
  }
  T pace(Task task) const { return system::hand_pace(task, build, y.data()); }
};

}  // namespace

// Brajkovic 2001 and Ray 2019: whole at 16 degC, lost at 8; the middle between.
TEST_CASE("fine work goes at the pace of the fingers, a grip at its own until the hand fails") {
  CHECK(Hands<double>(20, 20).pace(Task::sachet) == 1);
  CHECK(Hands<double>(12, 20).pace(Task::flare) == doctest::Approx(0.5));
  CHECK(Hands<double>(7.9, 20).pace(Task::sachet) == 0);
  CHECK(Hands<double>(5, 9).pace(Task::bailer) == 1);
  CHECK(Hands<double>(12, 7.9).pace(Task::pump) == 0);
}

TEST_CASE("hurt hands have no pace, however warm") {
  Hands<double> hurt(30, 30);
  hurt.build.fine_work = 0;
  CHECK(hurt.pace(Task::sachet) == 0);
  CHECK(hurt.pace(Task::pump) == 1);
}

TEST_CASE("paces in lanes are those of doubles") {
  Lanes<4> fingers(20), palms(20);
  fingers.set(1, 12), fingers.set(2, 7.9), fingers.set(3, 9.5);
  palms.set(1, 7.9), palms.set(3, 8.1);
  const Hands<Lanes<4>> wide(fingers, palms);
  for (int i = 0; i < 4; ++i)
    for (const Task task : {Task::sachet, Task::bailer})
      CHECK(lane(wide.pace(task), i) ==
            doctest::Approx(Hands<double>(lane(fingers, i), lane(palms, i)).pace(task)));
}
