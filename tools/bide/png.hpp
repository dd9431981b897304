// A drawing as PNG, where librsvg is installed when the program is built.
#pragma once

#include <string>
#include <variant>

namespace bide::tool {

bool can_draw_png();

struct PngRefused {
  std::string reason;
};
// @param svg one SVG document
// @return the bytes of the PNG, two pixels for each of the drawing's; the same for the same drawing and fonts
std::variant<std::string, PngRefused> png_of(const std::string& svg);

}  // namespace bide::tool
