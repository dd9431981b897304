// std::bit_cast, which the standard library of the browser's build lacks (libc++ 13).
#pragma once

namespace bide {

// The same bits as another type.
// @param from trivially copyable, of the size of To
template <class To, class From>
constexpr To bit_cast(const From& from) {
  return __builtin_bit_cast(To, from);
}

}  // namespace bide
