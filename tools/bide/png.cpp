#include "png.hpp"

#ifdef BIDE_RSVG
#include <cairo.h>
#include <librsvg/rsvg.h>

#include <boost/crc.hpp>
#include <boost/endian/conversion.hpp>
#include <memory>
#include <string_view>

#include "bide/report/words/made_by.hpp"
#endif

namespace bide::tool {

#ifdef BIDE_RSVG

namespace {

template <auto release>
struct Released {
  template <class T>
  void operator()(T* held) const {
    release(held);
  }
};

cairo_status_t append(void* to, const unsigned char* bytes, unsigned int count) {
  static_cast<std::string*>(to)->append(reinterpret_cast<const char*>(bytes), count);
  return CAIRO_STATUS_SUCCESS;
}

std::string big_endian(std::uint32_t value) {
  boost::endian::native_to_big_inplace(value);
  return {reinterpret_cast<const char*>(&value), sizeof value};
}

// A chunk of text, as PNG has it (W3C PNG, second edition, 5.3 and 11.3.4.3): length, kind, keyword, a zero,
// text, and the CRC-32 of all but the length.
std::string text_chunk(std::string_view keyword, std::string_view text) {
  std::string summed = "tEXt";
  summed.append(keyword).append(1, '\0').append(text);
  boost::crc_32_type crc;
  crc.process_bytes(summed.data(), summed.size());
  return big_endian(static_cast<std::uint32_t>(summed.size() - 4)) + summed + big_endian(crc.checksum());
}

PngRefused refused(GError* error, const char* otherwise) {
  PngRefused out{error ? error->message : otherwise};
  g_clear_error(&error);
  return out;
}

}  // namespace

bool can_draw_png() {
  return true;
}

std::variant<std::string, PngRefused> png_of(const std::string& svg) {
  constexpr double pixels = 2;
  GError* error = nullptr;
  const std::unique_ptr<RsvgHandle, Released<g_object_unref>> handle(
      rsvg_handle_new_from_data(reinterpret_cast<const guint8*>(svg.data()), svg.size(), &error));
  if (!handle) return refused(error, "the drawing cannot be read");
  double width = 0, height = 0;
  if (!rsvg_handle_get_intrinsic_size_in_pixels(handle.get(), &width, &height))
    return PngRefused{"the drawing has no size"};
  const RsvgRectangle all{0, 0, pixels * width, pixels * height};
  const std::unique_ptr<cairo_surface_t, Released<cairo_surface_destroy>> surface(cairo_image_surface_create(
      CAIRO_FORMAT_RGB24, static_cast<int>(all.width), static_cast<int>(all.height)));
  const std::unique_ptr<cairo_t, Released<cairo_destroy>> pen(cairo_create(surface.get()));
  if (!rsvg_handle_render_document(handle.get(), pen.get(), &all, &error))
    return refused(error, "the drawing cannot be drawn");
  std::string out;
  const cairo_status_t status = cairo_surface_write_to_png_stream(surface.get(), append, &out);
  if (status != CAIRO_STATUS_SUCCESS) return PngRefused{cairo_status_to_string(status)};
  constexpr std::size_t signature_and_header = 8 + 25;  // what must stand first
  out.insert(signature_and_header, text_chunk("Software", report::made_by_line()));
  return out;
}

#else

bool can_draw_png() {
  return false;
}

std::variant<std::string, PngRefused> png_of(const std::string& /*svg*/) {
  return PngRefused{"this program was built without librsvg"};
}

#endif

}  // namespace bide::tool
