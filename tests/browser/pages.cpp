// Writes a page whose every text is hostile, with every kind of series, for the browser to open.   Usage:
// pages FILE
#include <string>

#include "bide/core/file.hpp"
#include "bide/report/document/values.hpp"
#include "bide/report/html/page.hpp"

namespace {

using namespace bide::report::document;

Page hostile_page() {
  const std::string text =
      "</script><script>window.injected = 1</script><img src=x onerror=\"window.injected = 2\"> \" ' & "
      "\xE2\x80\xA8 </title></style><svg onload='window.injected = 3'>";
  Chart all;
  all.title = all.sentence = text;
  all.x = {text, "min"};
  all.y = {text, "degC"};
  for (const Kind kind : {Kind::spans, Kind::band, Kind::line, Kind::points, Kind::marks}) {
    Series series{text, kind, {}, {}};
    for (int i = 0; i < 5; ++i) {
      const double x = 10.0 * i, y = 30 + i;
      Point point{x, y, y - 1, y + 2, text};
      if (kind == Kind::line) point.low = point.high = Point::none;
      if (kind == Kind::spans) point.low = x, point.high = x + 2;
      if (kind == Kind::spans || kind == Kind::band || kind == Kind::marks) point.y = Point::none;
      if (kind == Kind::marks) point.low = point.high = Point::none;
      series.points.push_back(point);
    }
    if (kind == Kind::line) series.points[2].y = Point::none;  // a gap
    all.series.push_back(series);
  }
  Chart across;
  across.title = across.sentence = text;
  across.x = {text};
  across.y = {text, "m", true};
  across.categories = {text + " 1", text + " 2", text + " 3"};
  across.series = {{text, Kind::bars, {{0, 1, 0.5, 1.5}, {1, 2, 1.5, 2.5}, {2, 3}}, {}},
                   {text, Kind::points, {{0, 1.1}, {2, 2.8}}, {}}};
  Chart stay = across;
  stay.series = stack({text, text}, {{1, 0, 3}, {2, 2, 2}});
  stay.y.tick_every = 1;
  const Table wide{
      text, {{text}, {text, true}, {text}, {text}, {text}}, {{text, text, text, text, text}}, true};
  return {text,
          text,
          {{text, {Paragraph{text, true}, List{{text, text}, true}, wide}},
           {text, {all}},
           {text, {across, stay}, true}}};
}

}  // namespace

int main(int count, char** arguments) {
  return count == 2 && !bide::write_whole(arguments[1], bide::report::html::to_html(hostile_page())) ? 0 : 1;
}
