#include "tested/compare_amounts.hpp"

#include "quantity/figures.hpp"

namespace sealworthy::tested {
namespace {

constexpr double tolerance = 0.02;
constexpr double about = 0.10;  // a convention of this project

template <class T>
Interval<double> si(const Interval<T>& interval) {
  return {interval.low.si(), interval.high.si()};
}

std::optional<Size> size_of(const quantity::Amount::Measure& measure, std::string_view unit) {
  if (const auto* mass = std::get_if<Interval<Mass>>(&measure))
    return Size{Size::Kind::mass, {}, {}, si(*mass)};
  if (const auto* volume = std::get_if<Interval<Volume>>(&measure))
    return Size{Size::Kind::volume, {}, {}, si(*volume)};
  if (const auto* count = std::get_if<Interval<Count>>(&measure))
    return Size{Size::Kind::count, unit, {}, si(*count)};
  return std::nullopt;
}

/// "about" is in the measure already where the reader of amounts widened it; a stated figure tells.
Interval<double> widened(const quantity::Amount& amount, Interval<double> value) {
  if (amount.about && value.exact()) return {value.low * (1 - about), value.high * (1 + about)};
  return value;
}

std::string unit_words(const quantity::Amount& amount, double figure) {
  if (amount.unit.empty()) return {};
  const bool plural =
      figure > 1 && (amount.unit == "cup" || amount.unit == "quart" || amount.unit == "pint" ||
                     amount.unit == "gallon" || std::holds_alternative<Interval<Count>>(amount.measure));
  return " " + amount.unit + (plural ? "s" : "");
}

}  // namespace

std::vector<Size> sizes_of(const quantity::Amount& amount) {
  std::vector<Size> out;
  if (!amount.stated_any()) return out;
  auto first = size_of(amount.measure, amount.unit);
  if (!first) return out;
  first->value = widened(amount, first->value);
  const bool package = !std::holds_alternative<std::monostate>(amount.each);
  if (!package) first->size = amount.size;
  out.push_back(*first);
  if (auto each = size_of(amount.each, {}); each && first->kind == Size::Kind::count) {
    each->value = {each->value.low * first->value.low, each->value.high * first->value.high};
    out.push_back(*each);
  }
  return out;
}

Size size_of(const Interval<Mass>& weight) { return {Size::Kind::mass, {}, {}, si(weight)}; }

Beside beside(const Interval<double>& found, const Interval<double>& published) {
  const Interval<double> wide{published.low * (1 - tolerance), published.high * (1 + tolerance)};
  if (found.low >= wide.low && found.high <= wide.high) return {Beside::Result::equal, 0};
  if (found.low > wide.high) return {Beside::Result::more, (found.low / published.high - 1) * 100};
  if (found.high < wide.low) return {Beside::Result::less, (1 - found.high / published.low) * 100};
  return {Beside::Result::open, 0};
}

Beside beside_every(const Interval<double>& found, const Interval<double>& published) {
  const auto result = beside(found, published);
  if (result.result != Beside::Result::equal) return result;
  const bool every =
      found.low >= published.high * (1 - tolerance) && found.high <= published.low * (1 + tolerance);
  return {every ? Beside::Result::equal : Beside::Result::open, 0};
}

std::string words_of(const quantity::Amount& amount, double factor, double within) {
  const auto stated = amount.stated * factor;
  std::string out = amount.at_most ? "up to " : amount.about ? "about " : "";
  if (amount.size.empty() && (stated.exact() || amount.at_most))
    if (auto spoons = quantity::spoon_words(stated.high, amount.unit, within); !spoons.empty())
      return out + spoons;
  if (!stated.exact() && !amount.at_most) out += quantity::kitchen_number(stated.low) + " to ";
  out += quantity::kitchen_number(stated.high);
  if (!amount.size.empty()) out += " (" + amount.size + ")";
  return out + unit_words(amount, stated.high);
}

}  // namespace sealworthy::tested
