#pragma once

namespace sealworthy {

/// A closed interval [low, high]. An amount that a cook writes is one: "2-3 cups", "about 3", a missing size.
/// A check reads the end that is worse for safety. An exact figure has low == high.
template <class T>
struct Interval {
  T low{};
  T high{};

  static constexpr Interval exactly(T value) { return {value, value}; }
  [[nodiscard]] constexpr bool exact() const { return low == high; }
  [[nodiscard]] constexpr bool contains(const T& value) const { return low <= value && value <= high; }
  [[nodiscard]] constexpr bool overlaps(const Interval& other) const {
    return low <= other.high && other.low <= high;
  }

  friend constexpr bool operator==(const Interval&, const Interval&) = default;
  friend constexpr Interval operator+(const Interval& a, const Interval& b) {
    return {a.low + b.low, a.high + b.high};
  }
  friend constexpr Interval operator*(const Interval& a, double factor) {
    return {a.low * factor, a.high * factor};
  }
};

/// The smallest interval that holds both.
template <class T>
constexpr Interval<T> hull(const Interval<T>& a, const Interval<T>& b) {
  return {a.low < b.low ? a.low : b.low, a.high > b.high ? a.high : b.high};
}

}  // namespace sealworthy
