// A short name for what a result depends on: the same bytes have the same, other bytes hardly ever.
//
// States: the hash so far. Inputs: texts of any bytes; where one ends and the next begins counts too.
#pragma once

#include <cstdint>
#include <string_view>

namespace bide::study {

// FNV-1a of 64 bits (Fowler, Noll & Vo; offset basis and prime from memory).
class Hash {
 public:
  // @param text any bytes; two texts are not the same as one that joins them
  void add(std::string_view text) {
    for (const char letter : text) byte(static_cast<unsigned char>(letter));
    byte(0);
  }
  std::uint64_t value() const { return value_; }

 private:
  void byte(unsigned char one) { value_ = (value_ ^ one) * 0x100000001b3U; }
  std::uint64_t value_ = 0xcbf29ce484222325U;
};

}  // namespace bide::study
