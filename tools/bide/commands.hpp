// One function per command: each adds it to the program, with what it does.
#pragma once

#include "arguments.hpp"

namespace bide::tool {

void add_new(Program& program);
void add_run(Program& program);
void add_compare(Program& program);
void add_levers(Program& program);
void add_provision(Program& program);
void add_choose(Program& program);
void add_check(Program& program);
void add_odds(Program& program);
void add_catalogue(Program& program);
void add_study(Program& program);
void add_merge(Program& program);
void add_schema(Program& program);
void add_validate(Program& program);
void add_weather(Program& program);

}  // namespace bide::tool
