#pragma once

/// What the parts of ProcessReader share.

#include <utility>

#include "prose/sentence.hpp"

namespace sealworthy::prose {

inline bool denied(const Sentence& s, std::size_t word) {
  return s.denied(word) || s.polarity.supposed[word];
}

template <class T>
recipe::Placed<T> placed(const Sentence& s, const Mark& mark, T value) {
  return {std::move(value), s.at(mark.first), s.words(mark.first, mark.last)};
}

/// Both are told alike, or neither is told.
template <class T>
bool same_value(const std::optional<recipe::Placed<T>>& a, const std::optional<recipe::Placed<T>>& b) {
  return a.has_value() == b.has_value() && (!a || a->value == b->value);
}

inline Interval<Duration> minutes_of(const Interval<double>& figure) {
  return {minutes(figure.low), minutes(figure.high)};
}
inline Interval<Altitude> feet_of(const Interval<double>& figure) {
  return {feet(figure.low), feet(figure.high)};
}

inline bool water(reading::MethodKind kind) {
  return kind == reading::MethodKind::boiling_water || kind == reading::MethodKind::steam ||
         kind == reading::MethodKind::low_temperature;
}

/// True if a comma, a bracket or a colon parts two words.
inline bool parted(const Sentence& s, std::size_t from, std::size_t to) {
  for (std::size_t i = from; i <= to && i < s.tokens.size(); ++i)
    if (s.tokens[i].before != 0 && s.tokens[i].before != '(') return true;
  return false;
}

}  // namespace sealworthy::prose
