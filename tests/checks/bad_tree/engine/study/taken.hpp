#pragma once
// @param told_h  hours, at least 0
// @param a, b_kg two of them, in one line
double sum(double told_h, const T& a, double b_kg = 2);
double sum_again(double told_h);  // by the comment above

double untold(std::span<const double> many, std::size_t number);
class Taken {
  void hidden(int of_class);

 public:
  double open(double share) const { return share * hours(1); }
};
namespace detail {
inline double inner(double of_detail) {
  return of_detail;
}
}  // namespace detail
