#pragma once

/// The steps of reading one amount, in the order of the line: words before the figure, figure or range, unit
/// with its size words, package size, sum, unit noun behind the name. Only amount*.cpp include this.

#include <cstddef>
#include <optional>
#include <string_view>

#include "quantity/amount.hpp"
#include "quantity/kitchen_units.hpp"
#include "quantity/numbers.hpp"

namespace sealworthy::quantity {

struct Range {
  Interval<double> value;
  std::size_t end = 0;
  std::size_t first_end = 0;  ///< past the first figure
  std::size_t second_at = 0;  ///< where the upper figure stands, if there is one
  bool article = false;       ///< the figure is only "a" or "an"
  bool whole = false;         ///< the first figure is a whole number
  bool turned = false;        ///< the greater figure stands first
};

/// A weight or volume at a place: "28-oz", "1/4 cup".
struct Measured {
  Interval<double> value;
  std::string_view figure;  ///< as written
  const Unit* unit = nullptr;
  Units units = Units::us;
  std::size_t end = 0;

  [[nodiscard]] Interval<double> si() const;
  [[nodiscard]] Amount::Measure measure() const;
};

/// What stands at a place; nullopt or the place itself where it is something else. `between`: the words
/// "between
/// ... and" may part the ends of a range.
std::optional<Range> range_at(std::string_view text, std::size_t at, bool between = false);
std::optional<Measured> measured_at(std::string_view text, std::size_t at, Units units);
/// Past the same size in other units: "400g/14oz", "14 oz (398 ml)", "15-ounce [426-g]", "3lb 5oz".
std::size_t skip_equal_sizes(std::string_view text, std::size_t at, Units units);
/// Past the bracket that closes near `at`; nullopt where none does.
std::optional<std::size_t> past_bracket(std::string_view text, std::size_t at);

class AmountReader {
 public:
  AmountReader(std::string_view text, Units units) : text_(text), units_(units) {}

  /// The amount that starts at `at`, words before it ("about", "up to") included. To be called once.
  std::optional<Amount> read(std::size_t at);

 private:
  // amount_words.cpp
  std::size_t read_leads(std::size_t at);
  std::size_t read_sizes(std::size_t at, bool with_modifiers);
  bool read_unit(std::size_t at, bool only_counts);
  bool read_without_figure(std::size_t at);
  void read_noun_behind();
  void read_trailing_words();
  // amount_packages.cpp
  bool read_dimension(const Range& range);
  std::optional<Range> split_package(const Range& range) const;
  bool read_package_before(const Range& range);
  void read_package_after();
  void read_each_behind();
  void skip_container();
  void take_size(const Measured& size);
  // amount_sums.cpp
  void read_second_half_of_range();
  void read_sums();
  void skip_repeats();
  [[nodiscard]] Interval<double> in_first_unit(const Measured& other) const;
  // amount_reader.cpp
  void read_what_follows();
  [[nodiscard]] bool is_part_of_name(const Range& range) const;
  void finish();

  std::string_view text_;
  Units units_;
  Units unit_units_ = Units::us;  ///< the kitchen that `unit_` is of
  const Unit* unit_ = nullptr;
  std::size_t end_ = 0;
  bool between_ = false;
  Amount out_;
};

}  // namespace sealworthy::quantity
