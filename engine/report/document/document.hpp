// The answer to a question as a document: filled once, and written for a terminal (text.hpp), a browser
// (html/page.hpp) and other people's documents (markdown.hpp).
//
// Inputs: texts of any origin (each writer makes them printable and escapes them), numbers in the unit that
// the axis names. Validity: a value that is not finite leaves a gap in a line and is otherwise left out.
#pragma once

#include <limits>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "bide/report/words/answer.hpp"

namespace bide::report::document {

struct Axis {
  std::string label = {}, unit = {};
  bool from_zero = false;
  double tick_every = 0;  // in the axis's unit, a multiple of it where ticks would crowd; 0: automatic
};

// `low` and `high` are the spread about y; a band has nothing else.
struct Point {
  static constexpr double none = std::numeric_limits<double>::quiet_NaN();
  double x = 0, y = none, low = none, high = none;
  std::string label = {};  // shown with the point's values
  bool open = false;       // of a span: it goes on after `high`, and ends in an arrow
};

// Bars are for charts of categories; a mark is a moment or a place on the x axis, drawn across the chart.
// A span reaches from `low` to `high`: along the values in a chart of categories (y, where given, is its
// size: see stack()), else along the x axis, as a shade behind everything.
enum class Kind { line, points, band, bars, marks, spans };

struct Series {
  std::string name;
  Kind kind = Kind::line;
  std::vector<Point> points;
  std::optional<int>
      style;  // colour, dash and symbol go together; without it, the series' place in the chart
};

// With categories, x is a position in that list; they run down the page and values to the right.
struct Chart {
  std::string title;
  std::string sentence;  // what the chart shows, for those who cannot see it
  Axis x, y;
  std::vector<std::string> categories;
  std::vector<Series> series;
  bool folded = false;  // hidden behind its title until opened; not printed on paper, nor in text
  bool told = false;    // what it shows stands beside it in words, so that text leaves it out
};

struct Column {
  std::string name;
  bool number = false;
};

struct Table {
  std::string caption;
  std::vector<Column> columns;
  std::vector<std::vector<std::string>> rows;
  bool folded = false;   // hidden behind its caption until opened; not printed on paper
  bool on_paper = true;  // printed too
};

struct Paragraph {
  std::string text;
  bool large = false;    // an answer, to be read first
  bool on_paper = true;  // printed too
};

struct List {
  std::vector<std::string> items;
  bool to_tick = false;  // with a box before each item
};

// Lines of an answer: what is asked beside what is said.
struct Facts {
  Answer lines;
  bool large = false;  // to be read first
};

using Block = std::variant<Paragraph, List, Table, Chart, Facts>;

struct Section {
  std::string title;
  std::vector<Block> blocks;
  bool own_page = false;      // on paper
  bool first_screen = false;  // its title is not shown, and the list of contents comes after it
  bool brief = false;         // in the short text too, as the first section is
};

struct Page {
  std::string title;
  std::string lead;
  std::vector<Section> sections;
  std::string foot = {};  // file, start and seed: at the foot of each printed page
  std::string rest = {};  // what the sections after the first hold, in a few words
};

}  // namespace bide::report::document
