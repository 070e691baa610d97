// Any bytes through every reader of amounts, figures and jars. What must hold: no crash, no undefined
// behaviour, low <= high, nothing that is not a number, nothing infinite but the open end of an altitude,
// places inside the text, and an error that says something.

#include <cmath>
#include <cstdint>
#include <cstdlib>
#include <string_view>

#include "quantity/amount.hpp"
#include "quantity/figures.hpp"
#include "text/nearest.hpp"
#include "text/words.hpp"

using namespace sealworthy;
using namespace sealworthy::quantity;

namespace {

void require(bool holds) {
  if (!holds) std::abort();
}

template <class T>
void check_interval(const Interval<T>& range, bool open_above = false) {
  require(std::isfinite(range.low.si()));
  require(std::isfinite(range.high.si()) || (open_above && range.high.si() > 0));
  require(range.low <= range.high);
}

void check_measure(const Amount::Measure& measure) {
  if (const auto* mass = std::get_if<Interval<Mass>>(&measure)) check_interval(*mass);
  if (const auto* volume = std::get_if<Interval<Volume>>(&measure)) check_interval(*volume);
  if (const auto* count = std::get_if<Interval<Count>>(&measure)) check_interval(*count);
}

void check_amount(const std::optional<Amount>& amount, std::string_view text) {
  if (!amount) return;
  require(std::isfinite(amount->stated.low) && std::isfinite(amount->stated.high));
  require(0 <= amount->stated.low && amount->stated.low <= amount->stated.high);
  require(amount->begin <= amount->end && amount->end <= text.size());
  require(amount->noun_begin <= amount->noun_end && amount->noun_end <= text.size());
  require(amount->noun_begin == 0 || amount->noun_begin >= amount->end);
  require(amount->stated_any() || amount->measure.index() == 0);
  check_measure(amount->measure);
  check_measure(amount->each);
}

void check_error(const FigureError& error) { require(!error.message.empty() && !error.suggestion.empty()); }

template <class T>
void check_figure(const Figure<Interval<T>>& figure, bool open_above = false) {
  if (const auto* error = std::get_if<FigureError>(&figure)) return check_error(*error);
  const auto& range = std::get<Interval<T>>(figure);
  check_interval(range, open_above);
  if constexpr (requires { words(range.low); }) require(!words(range.low).empty());
}

void check_jar(const JarText& jar) {
  require(std::isfinite(jar.volume.si()) && jar.volume.si() > 0 && !jar.name.empty());
  require(!words(jar.volume).empty());
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  const auto units = static_cast<Units>(size % 3);

  const auto amount = read_amount(text, units);
  check_amount(amount, text);
  check_amount(read_amount(text, units, true), text);
  if (amount) {
    const auto again = read_equal(text, amount->end, units);
    check_amount(again, text);
    if (again) require(again->begin >= amount->end);
  }
  if (const auto error = refuse_amount(text, units)) check_error(*error);

  check_figure(read_pressure(text));
  check_figure(read_time(text));
  check_figure(read_altitude(text, units), true);
  check_figure(read_headspace(text));
  check_figure(read_piece_size(text));
  check_figure(read_temperature(text));

  const auto jar = read_jar(text, units);
  if (const auto* error = std::get_if<FigureError>(&jar)) check_error(*error);
  if (const auto* found = std::get_if<JarText>(&jar)) check_jar(*found);
  const auto yield = read_yield(text, units);
  if (const auto* error = std::get_if<FigureError>(&yield)) check_error(*error);
  if (const auto* found = std::get_if<Yield>(&yield)) {
    check_interval(found->count);
    if (found->jar) check_jar(*found->jar);
  }

  for (const auto& word : text::Words(text)) {
    require(word.begin < word.end && word.end <= size);
    require(!word.text.empty() && !text::singular(word.text).empty());
  }
  if (size >= 2 && size < 200) {
    const auto half = text.substr(0, size / 2);
    const auto rest = text.substr(size / 2);
    require(text::edit_distance(half, rest, 3) == text::edit_distance(rest, half, 3));
    require(text::edit_distance(half, half, 3) == 0);
  }
  return 0;
}
