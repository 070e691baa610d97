#pragma once

/// One grammar for the figures of a card: [words] value [range mark value] [words], a value being a figure
/// with its unit, or several with the greater unit first ("1 hr 15 min"). What a kind of figure has of its
/// own comes as data. Only card_values.cpp includes this.

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <variant>

#include "quantity/amount.hpp"
#include "quantity/value_units.hpp"

namespace sealworthy::quantity {

/// What a kind of figure is.
struct Wanted {
  Dimension dimension;
  std::string_view name;      ///< "a time"
  std::string_view examples;  ///< "\"25 minutes\" or \"1 hr 15 min\""
  std::string_view units;     ///< the units it knows, in words
  double bare;                ///< SI value of one of a figure without a unit; 0: a unit must be said
  double low;                 ///< least value, SI
  double high;                ///< greatest value, SI
  bool above_low = false;     ///< `low` itself is refused
  std::string_view accepted;  ///< the same in words: "0 to 30 psi"
  std::array<std::string_view, 3> nouns{};  ///< its own words, which add nothing ("pressure", "headspace")
};

class ValueReader {
 public:
  ValueReader(std::string_view text, const Wanted& wanted) : text_(text), wanted_(wanted) {}

  /// SI values. To be called once.
  std::variant<Interval<double>, FigureError> read();
  [[nodiscard]] bool open_below() const { return below_; }  ///< "up to", "below", "or less"
  [[nodiscard]] bool open_above() const { return above_; }  ///< "above", "6001+", "and up"
  [[nodiscard]] FigureError refuse(std::string_view what) const;

 private:
  struct Value {
    double figure = 0;                ///< signed, in `unit`
    const ValueUnit* unit = nullptr;  ///< nullptr: none said
    double more = 0;                  ///< SI value of the smaller units behind it ("1 hr *15 min*")
    std::size_t end = 0;

    [[nodiscard]] double si(const ValueUnit& unsaid) const {
      const auto& used = unit != nullptr ? *unit : unsaid;
      return (figure + used.offset) * used.factor + more;
    }
  };

  std::optional<Value> value_at(std::size_t at);
  std::optional<Value> term_at(std::size_t at);
  void add_smaller_units(Value& value);
  [[nodiscard]] std::optional<Value> clock_at(std::size_t at) const;
  [[nodiscard]] const ValueUnit* unit_after(std::size_t at, std::size_t& end) const;
  [[nodiscard]] bool fits(Dimension dimension) const;
  std::size_t skip_bounds_before(std::size_t at);
  std::size_t skip_bounds_after(std::size_t at);
  [[nodiscard]] std::size_t skip_nouns(std::size_t at) const;
  [[nodiscard]] std::optional<FigureError> refuse_rest(const Value& last, std::size_t at) const;
  [[nodiscard]] std::optional<FigureError> refuse_range(const Interval<double>& range) const;

  std::string_view text_;
  const Wanted& wanted_;
  std::optional<Dimension> strange_;  ///< a unit of another kind was met
  bool below_ = false;
  bool above_ = false;
};

}  // namespace sealworthy::quantity
