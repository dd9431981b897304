// Files of climate data to the series of one place.
//
// States: none. Inputs: files, a place, a span. Validity: the place of all is a cell of the sea: the nearest
// one in which the first file with a sea temperature has one. Air, wind, cloud and rain come from the cell of
// their own grid that is nearest to it; waves from the nearest cell that has them. Without a sea temperature
// nothing tells land from sea, and a note says so. Source: ours.
#pragma once

#include <filesystem>
#include <functional>
#include <vector>

#include "columns.hpp"
#include "series.hpp"

namespace bide::tool::cf {

struct Request {
  Place place;
  Span span;
  double reach_km = 0;  // farthest that a cell may be
  bool running_rain = false;
};

struct Reading {
  std::vector<Series> series;
  std::vector<std::string> files;  // what each file says of itself, a line each
  std::vector<std::string> notes;
};

// Throws Refused, with the file's name in the message.
// @param watch called with a file's place in `paths` before each piece of reading
Reading read(const std::vector<std::filesystem::path>& paths, const Request& request,
             const std::function<void(std::size_t)>& watch);

}  // namespace bide::tool::cf
