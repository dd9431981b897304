#pragma once
template <class T>
inline T heat_W(T difference_K) {
  constexpr double three = 3;
  T sum(0);
  for (int i = 0; i < 4; ++i) sum += T(2) * difference_K;  // 9.9 in a comment is no number
  return sum * three + T(8.3) * difference_K * 60;
}
