// Small parts of a drawing: scales, colours, texts, symbols.
#pragma once

#include <limits>
#include <string>
#include <string_view>

#include "bide/report/document/document.hpp"

namespace bide::report::html {

// Values to places, px.
struct Scale {
  double low = 0, high = 1, from = 0, to = 1;
  double operator()(double value) const { return from + (value - low) / (high - low) * (to - from); }
};

// A step of 1, 2 or 5 times a power of ten.
// @param span  what the steps divide, > 0
// @param about how many of them
double nice_step(double span, double about);

// The ends of some values.
struct Extent {
  double low = std::numeric_limits<double>::infinity(), high = -low;
  void take(double value);  // one that is not finite is passed over
  // @param whole both ends moved out to a whole step
  Scale scale(double from, double to, bool whole) const;
};

// A value of the page's style by day: "series-0" -> "#1d5c96".
std::string style_value(std::string_view name);
std::string series_colour(int style);
std::string dashes(int style);  // as an attribute; none for a full line
std::string hatch(int style);   // as a fill
std::string hatches();          // what hatch() refers to

// @param size   of the letters, px
// @param colour name in the page's style
std::string words(double x, double y, int size, std::string_view colour, std::string_view text,
                  std::string_view anchor = "start", bool bold = false);
std::string symbol(int style, double x, double y);
// What a series looks like, in a legend.
std::string sample(document::Kind kind, bool across, int style, double x, double y, double wide);

}  // namespace bide::report::html
