#include "cf/own_process.hpp"

#include <doctest/doctest.h>
#include <unistd.h>

#include <csignal>
#include <stdexcept>

using namespace bide::tool;

TEST_CASE("work that ends gives its code") {
  const auto end = in_own_process([](Watched& watched) {
    watched.at(1);
    return 4;
  });
  REQUIRE(std::holds_alternative<int>(end));
  CHECK(std::get<int>(end) == 4);
}

TEST_CASE("work that dies is told, with what was at work") {
  const auto killed = in_own_process([](Watched& watched) {
    watched.at(2);
    std::raise(SIGSEGV);
    return 0;
  });
  REQUIRE(std::holds_alternative<Died>(killed));
  CHECK(std::get<Died>(killed).thing == 2);
  CHECK(std::get<Died>(killed).how == "signal 11");

  const auto hung = in_own_process([](Watched&) {
    std::raise(SIGPROF);  // the alarm of work that is silent for too long
    return 0;
  });
  REQUIRE(std::holds_alternative<Died>(hung));
  CHECK(std::get<Died>(hung).how == "it came to no end");

  const auto left = in_own_process([](Watched&) -> int { ::_exit(0); });
  REQUIRE(std::holds_alternative<Died>(left));
  CHECK(std::get<Died>(left).how == "it ended by itself");
}

TEST_CASE("what work throws does not leave its process") {
  const pid_t parent = ::getpid();
  const auto end = in_own_process([](Watched&) -> int { throw std::runtime_error("a fault"); });
  CHECK(::getpid() == parent);
  CHECK(std::holds_alternative<Died>(end));
}
