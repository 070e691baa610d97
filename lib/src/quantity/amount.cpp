#include "quantity/amount.hpp"

#include <algorithm>
#include <array>
#include <utility>

#include "quantity/numbers.hpp"
#include "quantity/unit_table.hpp"

namespace sealworthy::quantity {
namespace {

bool is(std::string_view text, std::size_t at, char c) { return at < text.size() && text[at] == c; }
bool ascii_letter(std::string_view text, std::size_t at) {
  return at < text.size() && ((text[at] >= 'a' && text[at] <= 'z') || (text[at] >= 'A' && text[at] <= 'Z'));
}
bool ascii_digit(std::string_view text, std::size_t at) {
  return at < text.size() && text[at] >= '0' && text[at] <= '9';
}

/// The place after the words of `phrase`, if they stand at `at`.
std::optional<std::size_t> phrase_at(std::string_view text, std::size_t at, std::string_view phrase) {
  std::size_t next = at;
  while (!phrase.empty()) {
    const auto space = std::min(phrase.find(' '), phrase.size());
    const Letters word(text, next);
    if (!word.is(phrase.substr(0, space))) return std::nullopt;
    phrase.remove_prefix(std::min(space + 1, phrase.size()));
    at = word.end();
    next = skip_space(text, at);
  }
  return at;
}

enum class Lead { about, at_most, at_least, nothing };
struct LeadPhrase {
  std::string_view words;
  Lead means;
};
constexpr std::array lead_phrases{
    LeadPhrase{"about", Lead::about},
    LeadPhrase{"approximately", Lead::about},
    LeadPhrase{"approx", Lead::about},
    LeadPhrase{"around", Lead::about},
    LeadPhrase{"roughly", Lead::about},
    LeadPhrase{"circa", Lead::about},
    LeadPhrase{"ca", Lead::about},
    LeadPhrase{"nearly", Lead::about},
    LeadPhrase{"almost", Lead::about},
    LeadPhrase{"scant", Lead::about},
    LeadPhrase{"heaping", Lead::about},
    LeadPhrase{"heaped", Lead::about},
    LeadPhrase{"generous", Lead::about},
    LeadPhrase{"rounded", Lead::about},
    LeadPhrase{"up to", Lead::at_most},
    LeadPhrase{"at most", Lead::at_most},
    LeadPhrase{"no more than", Lead::at_most},
    LeadPhrase{"not more than", Lead::at_most},
    LeadPhrase{"maximum", Lead::at_most},
    LeadPhrase{"max", Lead::at_most},
    LeadPhrase{"at least", Lead::at_least},
    LeadPhrase{"minimum", Lead::at_least},
    LeadPhrase{"no less than", Lead::at_least},
    LeadPhrase{"not less than", Lead::at_least},
    LeadPhrase{"level", Lead::nothing},
    LeadPhrase{"between", Lead::nothing},
    LeadPhrase{"from", Lead::nothing},
    LeadPhrase{"exactly", Lead::nothing},
};

/// Words between a figure and its unit that don't change what is measured; `about` ones make it inexact.
struct Modifier {
  std::string_view word;
  bool about;
};
constexpr std::array modifiers{
    Modifier{"heaping", true},  Modifier{"heaped", true},  Modifier{"scant", true},
    Modifier{"generous", true}, Modifier{"rounded", true}, Modifier{"good", true},
    Modifier{"level", false},   Modifier{"thin", false},   Modifier{"thick", false},
    Modifier{"very", false},    Modifier{"fat", false},    Modifier{"plump", false},
    Modifier{"whole", false},   Modifier{"full", false},   Modifier{"long", false},
    Modifier{"short", false},   Modifier{"thumb", false},  Modifier{"sized", false},
    Modifier{"hefty", false},   Modifier{"big", false},    Modifier{"packed", false},
    Modifier{"firmly", false},  Modifier{"lightly", false}};

struct SizeWord {
  std::string_view word;
  std::string_view size;
};
constexpr std::array size_words{SizeWord{"small", "small"},   SizeWord{"sm", "small"},
                                SizeWord{"medium", "medium"}, SizeWord{"med", "medium"},
                                SizeWord{"md", "medium"},     SizeWord{"large", "large"},
                                SizeWord{"lg", "large"},      SizeWord{"lge", "large"}};

/// Nouns that are taken as the unit though they stand behind the name. Where `after` is set the noun is one
/// only behind these words: in "4 bay leaves", "2 vanilla pods", "1 cinnamon stick", "4 lettuce heads", "3
/// pork ribs" it is a part of the name. Settled by what 2,530 labelled lines call the unit
/// (tests/data/labelled-lines.tsv).
struct NounBehind {
  std::string_view unit;
  std::array<std::string_view, 4> after;
};
constexpr std::array nouns_behind{
    NounBehind{"clove", {"garlic"}},
    NounBehind{"sprig", {}},
    NounBehind{"stalk", {}},
    NounBehind{"slice", {}},
    NounBehind{"wedge", {}},
    NounBehind{"spear", {}},
    NounBehind{"stick", {"celery", "butter"}},
    NounBehind{"rib", {"celery", "chard"}},
    NounBehind{"head", {"garlic", "dill", "cabbage", "cauliflower"}},
    NounBehind{"bulb", {"garlic", "fennel"}},
    NounBehind{"ear", {"corn"}},
};

constexpr std::array<std::string_view, 16> not_one_of{
    "little", "few", "bit",     "lot",     "some",  "sprinkle",   "drizzle",     "touch",
    "mix",    "day", "mixture", "variety", "total", "sprinkling", "combination", "generous"};

bool has_figures(const Unit* unit) {
  return unit != nullptr && (unit->kind == Kind::mass || unit->kind == Kind::volume);
}
bool counts(const Unit* unit) {
  return unit != nullptr && (unit->kind == Kind::piece || unit->kind == Kind::package);
}

struct Range {
  Interval<double> value;
  std::size_t end = 0;
  bool article = false;  ///< the figure is only "a" or "an"
  bool whole = false;
  std::size_t second_at = 0;  ///< where the upper figure stands, if there is one
  bool dashed = false;
};

/// Length words that make a figure the dimension of a piece: the place after one, or nullopt.
std::optional<std::size_t> dimension_at(std::string_view text, std::size_t at, bool hyphened) {
  const Letters word(text, at);
  if (word.is("inch") || word.is("inches") || word.is("cm") || word.is("mm") || word.is("centimeter") ||
      word.is("centimetre") || (word.is("in") && hyphened)) {
    auto end = word.end();
    if (is(text, end, '.')) ++end;
    return end;
  }
  if (const auto mark = inch_mark_at(text, at)) return at + mark;
  return std::nullopt;
}

class Reader {
 public:
  Reader(std::string_view text, Units units) : text_(text), units_(units) {}

  /// The amount that starts at `at`, leading words ("about", "up to") included.
  std::optional<Amount> read(std::size_t at);
  [[nodiscard]] bool has_unit() const { return unit_ != nullptr; }
  [[nodiscard]] bool unit_with_figures() const { return has_figures(unit_); }

 private:
  struct Sized {
    Interval<double> value;
    const Unit* unit = nullptr;
    Units units = Units::us;
    std::size_t end = 0;
  };

  std::size_t read_leads(std::size_t at);
  std::optional<Range> read_range(std::size_t at) const;
  bool read_pinch(std::size_t at);
  bool read_dimension(const Range& range);
  bool read_package_before(const Range& range);
  std::optional<Range> split_package(const Range& range) const;
  bool read_unit(std::size_t at, bool only_counts);
  std::size_t read_sizes(std::size_t at, bool with_modifiers);
  void read_package_after();
  void read_second_half_of_range();
  void read_sums();
  void skip_container();
  void skip_repeats();
  void read_noun_behind();
  void read_trailing_words();
  void finish();

  [[nodiscard]] std::optional<Sized> sized_at(std::size_t at) const;
  [[nodiscard]] std::size_t unit_place(std::size_t at) const;
  [[nodiscard]] std::size_t skip_equal_sizes(std::size_t at) const;
  [[nodiscard]] double in_first_unit(const Sized& other, bool high) const;
  void take_size(const Sized& size, std::size_t from);

  std::string_view text_;
  Units units_;
  Amount out_;
  const Unit* unit_ = nullptr;
  Units unit_units_ = Units::us;
  Range range_;
  std::size_t end_ = 0;
};

std::size_t Reader::read_leads(std::size_t at) {
  for (bool more = true; more;) {
    more = false;
    at = skip_space(text_, at);
    if (is(text_, at, '~') || is(text_, at, '@')) {
      out_.about = true;
      ++at;
      more = true;
      continue;
    }
    if (!ascii_letter(text_, at)) break;
    for (const auto& lead : lead_phrases) {
      if (lead.words[0] != (text_[at] | 0x20)) continue;
      const auto end = phrase_at(text_, at, lead.words);
      if (!end) continue;
      if (lead.means == Lead::about) out_.about = true;
      if (lead.means == Lead::at_most) out_.at_most = true;
      if (lead.means == Lead::at_least) out_.at_least = true;
      at = is(text_, *end, '.') ? *end + 1 : *end;
      more = true;
      break;
    }
  }
  return at;
}

std::optional<Range> Reader::read_range(std::size_t at) const {
  const auto first = read_number(text_, at);
  if (!first) return std::nullopt;
  Range range;
  range.value = {first->value, first->value};
  range.end = first->end;
  range.whole = first->whole;
  const Letters article(text_, at);
  range.article = first->in_words && first->end == article.end() && (article.is("a") || article.is("an"));
  if (range.article) return range;
  auto mark = range_mark(text_, first->end, true);
  if (!mark) {
    const Letters both(text_, skip_space(text_, first->end));
    // "between 2 and 3"; a mixed number in words ("two and a half") is past already
    if (both.is("and")) mark = skip_space(text_, both.end());
    const auto second = mark && ascii_digit(text_, *mark) ? read_figure(text_, *mark) : std::nullopt;
    if (!second || !phrase_at(text_, skip_space(text_, out_.begin), "between")) return range;
  }
  const Letters article_two(text_, *mark);
  if (article_two.is("a") || article_two.is("an")) return range;
  const auto second = read_number(text_, *mark);
  if (!second) return range;
  range.value = {std::min(first->value, second->value), std::max(first->value, second->value)};
  range.second_at = *mark;
  range.dashed = dash_at(text_, skip_space(text_, first->end)) != 0;
  range.end = second->end;
  return range;
}

/// Past spaces and one hyphen between a figure and its unit.
std::size_t Reader::unit_place(std::size_t at) const {
  std::size_t next = skip_space(text_, at);
  if (const auto dash = dash_at(text_, next)) next = skip_space(text_, next + dash);
  return next;
}

std::size_t Reader::read_sizes(std::size_t at, bool with_modifiers) {
  std::size_t end = at;
  std::string_view size;
  bool mixed = false;
  bool extra = false;
  for (int i = 0; i < 5; ++i) {
    const Letters word(text_, unit_place(end));
    if (word.empty()) break;
    if (word.is("extra")) {
      const Letters next(text_, unit_place(word.end()));
      if (!next.is("large") && !next.is("small")) break;
      extra = true;
      end = word.end();
      continue;
    }
    const auto known = std::find_if(size_words.begin(), size_words.end(),
                                    [&](const SizeWord& entry) { return word.is(entry.word); });
    if (known != size_words.end()) {
      mixed = mixed || !size.empty();
      size = known->size;
      end = is(text_, word.end(), '.') ? word.end() + 1 : word.end();
      const Letters tail(text_, unit_place(end));
      if (tail.is("size") || tail.is("sized")) end = tail.end();
      const Letters joint(text_, unit_place(end));
      if (joint.is("to") || joint.is("or")) {
        const Letters other(text_, unit_place(joint.end()));
        if (other.is("medium") || other.is("large") || other.is("small") || other.is("med"))
          end = joint.end();
      }
      continue;
    }
    if (!with_modifiers) break;
    const auto modifier = std::find_if(modifiers.begin(), modifiers.end(),
                                       [&](const Modifier& entry) { return word.is(entry.word); });
    if (modifier == modifiers.end()) break;
    if (modifier->about) out_.about = true;
    end = word.end();
  }
  if (!size.empty()) out_.size = mixed ? std::string() : (extra ? "extra " : "") + std::string(size);
  return end;
}

/// The unit that follows at `at`, with size words and modifiers before it. Without a unit only size words are
/// taken ("6 medium onions").
bool Reader::read_unit(std::size_t at, bool only_counts) {
  const bool glued = ascii_letter(text_, at);
  for (const std::string_view of : {"of a", "of an", "of the"})  // "1/3 of a bunch"
    if (const auto end = phrase_at(text_, skip_space(text_, at), of)) at = *end;
  const bool about_before = out_.about;
  const std::string size_before = out_.size;
  const auto place = read_sizes(at, true);
  auto match = unit_at(text_, unit_place(place), glued && place == at);
  if (match && match->unit->kind == Kind::dozen) {
    unit_ = match->unit;
    end_ = match->end;
    const Letters of(text_, skip_space(text_, match->end));
    const auto more = unit_at(text_, unit_place(read_sizes(match->end, true)));
    if (more && counts(more->unit)) {
      out_.stated = out_.stated * 12;
      match = more;
    }
  }
  const bool spice = match && match->unit->name == "clove" && place != at &&
                     phrase_at(text_, unit_place(at), "whole").has_value() &&
                     !phrase_at(text_, skip_space(text_, match->end), "garlic") &&
                     !phrase_at(text_, skip_space(text_, match->end), "of garlic");
  if (match && !spice && !(only_counts && has_figures(match->unit))) {
    unit_ = match->unit;
    unit_units_ = match->said.value_or(units_);
    end_ = match->end;
    if (has_figures(unit_)) out_.size = size_before;
    return true;
  }
  out_.about = about_before;
  out_.size = size_before;
  end_ = std::max(end_, read_sizes(at, false));
  return false;
}

/// A figure with a weight or volume unit at `at`.
std::optional<Reader::Sized> Reader::sized_at(std::size_t at) const {
  const auto range = read_range(at);
  if (!range || range->article) return std::nullopt;
  const auto match = unit_at(text_, unit_place(range->end), ascii_letter(text_, range->end));
  if (!match || !has_figures(match->unit)) return std::nullopt;
  return Sized{range->value, match->unit, match->said.value_or(units_), match->end};
}

/// Past the same size in other units: "400g/14oz", "14 oz (398 ml)", "15-ounce [426-g]", "3lb 5oz".
std::size_t Reader::skip_equal_sizes(std::size_t at) const {
  for (int i = 0; i < 3; ++i) {
    const auto next = skip_space(text_, at);
    const bool slash = is(text_, next, '/');
    const bool bracket = is(text_, next, '(') || is(text_, next, '[');
    const auto inner = slash || bracket ? skip_space(text_, next + 1) : next;
    const auto other = sized_at(inner);
    if (!other) return at;
    at = other->end;
    if (bracket) {
      const auto close = text_.find_first_of(")]", at);
      if (close == std::string_view::npos) return at;
      at = close + 1;
    }
  }
  return at;
}

void Reader::take_size(const Sized& size, std::size_t from) {
  auto figure = text_.substr(from, size.end - from);
  const auto unit = unit_at(text_, unit_place(read_range(from)->end));
  if (unit) figure = text_.substr(from, read_range(from)->end - from);
  out_.size = std::string(figure) + " " + std::string(size.unit->name);
  const auto one = size.unit->one(size.units);
  if (size.unit->kind == Kind::mass)
    out_.each =
        Interval<Mass>{Mass::from_si(size.value.low * one.low), Mass::from_si(size.value.high * one.high)};
  else
    out_.each = Interval<Volume>{Volume::from_si(size.value.low * one.low),
                                 Volume::from_si(size.value.high * one.high)};
}

/// "2½-inch piece of ginger", "3 inches stick cinnamon": one piece of that length.
bool Reader::read_dimension(const Range& range) {
  const auto place = unit_place(range.end);
  const auto end = dimension_at(text_, place, place != range.end && !is(text_, range.end, ' '));
  if (!end) return false;
  out_.stated = {1, 1};
  end_ = *end;
  read_unit(*end, true);
  return true;
}

/// "1-28 oz can", "1 - 7.5 oz box": a count and a size joined by a dash, told from a range by the package
/// that follows and by figures too far apart for a range.
std::optional<Range> Reader::split_package(const Range& range) const {
  if (!range.dashed || range.second_at == 0 || !range.whole) return std::nullopt;
  const auto size = sized_at(range.second_at);
  if (!size) return std::nullopt;
  const auto behind = unit_at(text_, unit_place(skip_equal_sizes(size->end)));
  if (!behind || behind->unit->kind != Kind::package) return std::nullopt;
  const bool apart = size->value.low >= 4 * range.value.low;
  if (!apart) return std::nullopt;
  Range count = range;
  count.value.high = count.value.low;
  count.end = range.second_at;
  count.second_at = 0;
  return count;
}

/// "1 28-oz can", "2 (14.5 oz) cans", "2 x 400g tins", "four 6-ounce fillets", "2 8-inch-long eggplants".
bool Reader::read_package_before(const Range& range) {
  auto at = skip_space(text_, range.end);
  if (is(text_, at, 'x') && !ascii_letter(text_, at + 1)) at = skip_space(text_, at + 1);
  if (text_.substr(std::min(at, text_.size())).starts_with("\xC3\x97")) at = skip_space(text_, at + 2);
  if (const auto half = unit_at(text_, at); half && half->unit->name.starts_with("half-")) return false;
  const bool bracket = is(text_, at, '(') || is(text_, at, '[');
  if (bracket) at = skip_space(text_, at + 1);
  bool about = false;
  if (bracket)
    for (const std::string_view word : {"about", "approximately", "approx", "each"})
      if (const auto end = phrase_at(text_, at, word)) {
        about = true;
        at = skip_space(text_, is(text_, *end, '.') ? *end + 1 : *end);
      }
  const auto size = sized_at(at);
  std::size_t behind = 0;
  if (size) {
    behind = skip_equal_sizes(size->end);
  } else {
    const auto length = read_figure(text_, at);
    if (!length) return false;
    const auto place = unit_place(length->end);
    const auto end = dimension_at(text_, place, place != length->end);
    if (!end) return false;
    behind = *end;
    const Letters way(text_, unit_place(behind));
    if (way.is("long") || way.is("thick") || way.is("wide")) behind = way.end();
    if (is(text_, skip_space(text_, behind), '/')) {
      const auto other = read_figure(text_, skip_space(text_, behind) + 1);
      const auto other_end = other ? dimension_at(text_, unit_place(other->end), true) : std::nullopt;
      if (other_end) behind = *other_end;
    }
  }
  if (bracket) {
    const auto close = text_.find_first_of(")]", behind);
    if (close == std::string_view::npos) return false;
    const bool all_said = text_.substr(behind, close - behind).find("each") == std::string_view::npos;
    behind = close + 1;
    while (is(text_, behind, ')') || is(text_, behind, ']')) ++behind;
    const auto unit = unit_at(text_, unit_place(behind));
    if (unit && has_figures(unit->unit)) return read_unit(behind, false);  // "1/2 (2 mL) teaspoon"
    if (about && all_said && !(unit && counts(unit->unit))) return false;  // "6 (about 2 lb) tomatoes"
  }
  if (about) out_.about = false;
  end_ = behind;
  read_unit(behind, true);
  end_ = std::max(end_, behind);
  if (size) take_size(*size, at);
  return true;
}

/// "cans (28 oz each)", "can (28 oz)", "box - 1 3/4 oz", "4 fillets (6 oz each)".
void Reader::read_package_after() {
  if (!counts(unit_)) return;
  auto at = skip_space(text_, end_);
  const bool bracket = is(text_, at, '(') || is(text_, at, '[');
  const auto dash = dash_at(text_, at);
  const bool comma = is(text_, at, ',');
  if (!bracket && dash == 0 && !comma) return;
  at = skip_space(text_, at + (dash != 0 ? dash : 1));
  for (const std::string_view word : {"about", "approximately", "approx", "each"})
    if (const auto end = phrase_at(text_, at, word)) at = skip_space(text_, *end);
  const auto size = sized_at(at);
  if (!size) return;
  auto end = skip_equal_sizes(size->end);
  const Letters word(text_, skip_space(text_, end));
  const bool each = word.is("each") || word.is("ea");
  if (each) end = word.end();
  if (unit_->kind == Kind::piece && !each) return;
  if (comma && !each) return;
  if (bracket) {
    const auto close = text_.find_first_of(")]", end);
    if (close == std::string_view::npos) return;
    end = close + 1;
  }
  take_size(*size, at);
  end_ = end;
}

double Reader::in_first_unit(const Sized& other, bool high) const {
  const auto mine = unit_->one(unit_units_);
  const auto theirs = other.unit->one(other.units);
  return high ? other.value.high * theirs.high / mine.high : other.value.low * theirs.low / mine.low;
}

/// "1 cup to 2 cups", "250g-300g", "2 tablespoons to 1/4 cup".
void Reader::read_second_half_of_range() {
  if (!has_figures(unit_) || !out_.stated.exact()) return;
  const auto mark = range_mark(text_, end_, true);
  if (!mark) return;
  const auto other = sized_at(*mark);
  if (!other || other->unit->kind != unit_->kind) return;
  const bool said_or = phrase_at(text_, skip_space(text_, end_), "or").has_value();
  if (said_or ? other->unit != unit_ : other->unit->metric_system != unit_->metric_system) return;
  const double bound = in_first_unit(*other, true);
  out_.stated = {std::min(out_.stated.low, bound), std::max(out_.stated.high, bound)};
  end_ = other->end;
}

/// "2 lb. + 4 oz", "1 cup plus 2 tablespoons", "1 lb 4 oz", "1 cup minus 1 tablespoon".
void Reader::read_sums() {
  while (has_figures(unit_)) {
    auto at = skip_space(text_, end_);
    if (is(text_, at, ',')) at = skip_space(text_, at + 1);
    const Letters word(text_, at);
    const bool less = word.is("minus") || word.is("less");
    const bool joined = word.is("plus") || word.is("and") || less || is(text_, at, '+') || is(text_, at, '&');
    if (joined) at = skip_space(text_, word.empty() ? at + 1 : word.end());
    const auto other = sized_at(at);
    if (!other || other->unit->kind != unit_->kind) return;
    const double low = in_first_unit(*other, false);
    const double high = in_first_unit(*other, true);
    const bool smaller =
        other->unit->metric_system == unit_->metric_system && other->unit != unit_ && high < 1;
    if (!joined && !smaller) return;
    if (less && low >= out_.stated.low) return;
    out_.stated = less ? Interval<double>{out_.stated.low - high, out_.stated.high - low}
                       : Interval<double>{out_.stated.low + low, out_.stated.high + high};
    end_ = other->end;
  }
}

/// "16-ounce package split peas", "2 quart jars": the amount is the weight or volume; the vessel is not a
/// food.
void Reader::skip_container() {
  if (!has_figures(unit_)) return;
  const auto match = unit_at(text_, unit_place(skip_equal_sizes(end_)));
  if (match && match->unit->kind == Kind::package) end_ = match->end;
}

/// Web pages double amounts: "4 lb 4lb(1.8 kg)", "2 2oniononions".
void Reader::skip_repeats() {
  const auto at = skip_space(text_, end_);
  if (!ascii_digit(text_, at)) return;
  const auto again = read_figure(text_, at);
  if (!again || again->value != out_.stated.low) return;
  if (unit_ == nullptr) {
    if (ascii_letter(text_, again->end)) end_ = again->end;
    return;
  }
  const auto match = unit_at(text_, unit_place(again->end), ascii_letter(text_, again->end));
  if (match && match->unit == unit_) end_ = match->end;
}

/// "6 garlic cloves", "2 celery stalks": see nouns_behind.
void Reader::read_noun_behind() {
  if (unit_ != nullptr) return;
  std::size_t at = end_;
  Letters before;
  for (int i = 0; i < 4; ++i) {
    const auto next = skip_space(text_, at);
    const auto dash = dash_at(text_, next);
    const Letters word(text_, next + dash);
    if (word.empty() || word.is("or") || word.is("and") || word.is("plus") || word.is("with") ||
        word.is("in") || word.is("for") || word.is("of"))
      return;
    if (i > 0) {
      const auto match = unit_at(text_, next);
      const auto noun =
          match ? std::find_if(nouns_behind.begin(), nouns_behind.end(),
                               [&](const NounBehind& entry) { return entry.unit == match->unit->name; })
                : nouns_behind.end();
      if (noun != nouns_behind.end()) {
        const bool any = noun->after[0].empty();
        if (any || std::find_if(noun->after.begin(), noun->after.end(), [&](std::string_view name) {
                     return !name.empty() && before.is(name);
                   }) != noun->after.end()) {
          unit_ = match->unit;
          out_.noun_begin = next;
          out_.noun_end = word.end();
          return;
        }
      }
    }
    before = word;
    at = word.end();
  }
}

void Reader::read_trailing_words() {
  const auto at = skip_space(text_, end_);
  if (const auto end = phrase_at(text_, at, "or so")) {
    out_.about = true;
    end_ = *end;
  } else if (const auto more = phrase_at(text_, at, "or more")) {
    out_.at_least = true;
    end_ = *more;
  } else if (const auto less = phrase_at(text_, at, "or less")) {
    out_.at_most = true;
    end_ = *less;
  } else if (unit_ != nullptr && is(text_, at, '+') && !ascii_digit(text_, skip_space(text_, at + 1))) {
    out_.at_least = true;
    end_ = at + 1;
  }
}

/// "pinch of salt", "a generous pinch", "dash pepper", "handful of dill": no figure. Other pieces need an
/// "of"
/// ("strips of lemon peel"): without it they begin a name ("stick cinnamon").
bool Reader::read_pinch(std::size_t at) {
  if (!ascii_letter(text_, at)) return false;
  const Letters article(text_, at);
  const bool one = article.is("a") || article.is("an");
  const auto from = one ? skip_space(text_, article.end()) : at;
  const auto place = unit_place(read_sizes(from, true));
  const auto match = unit_at(text_, place);
  const auto fails = [&] {
    out_.size.clear();
    return false;
  };
  if (!match) return fails();
  if (match->unit->kind != Kind::imprecise) {
    if (one || !counts(match->unit)) return fails();
    static constexpr std::array<std::string_view, 4> alone{"handful", "bunch", "sprig", "knob"};
    const bool stands_alone = std::find(alone.begin(), alone.end(), match->unit->name) != alone.end();
    if (!stands_alone && !phrase_at(text_, skip_space(text_, match->end), "of")) return fails();
  }
  unit_ = match->unit;
  end_ = match->end;
  return true;
}

void Reader::finish() {
  if (out_.at_most) out_.stated.low = 0;
  out_.unit = unit_ == nullptr ? std::string() : std::string(unit_->name);
  out_.end = end_;
  if (!out_.stated_any()) return;
  const auto stated = out_.stated;
  if (unit_ == nullptr || counts(unit_)) {
    out_.measure = Interval<Count>{count(stated.low), count(stated.high)};
    return;
  }
  const auto one = unit_->one(unit_units_);
  const Interval<double> si{stated.low * one.low, stated.high * one.high};
  switch (unit_->kind) {
    case Kind::mass:
      out_.measure = Interval<Mass>{Mass::from_si(si.low), Mass::from_si(si.high)};
      break;
    case Kind::volume:
      out_.measure = Interval<Volume>{Volume::from_si(si.low), Volume::from_si(si.high)};
      break;
    case Kind::dozen:
      out_.measure = Interval<Count>{count(si.low), count(si.high)};
      break;
    case Kind::piece:
    case Kind::package:
    case Kind::imprecise:
      break;
  }
}

std::optional<Amount> Reader::read(std::size_t at) {
  out_.begin = at;
  at = read_leads(at);
  if (read_pinch(at)) {
    finish();
    return std::move(out_);
  }
  auto range = read_range(at);
  if (!range || range->value.high <= 0) return std::nullopt;
  if (const auto split = split_package(*range)) range = split;
  out_.stated = range->value;
  end_ = range->end;
  if (range->second_at == 0 && read_dimension(*range)) {
    finish();
    return std::move(out_);
  }
  if (!read_package_before(*range) && !read_unit(range->end, false)) {
    const Letters next(text_, skip_space(text_, range->end));
    if (range->article &&
        (next.empty() || std::find(not_one_of.begin(), not_one_of.end(), next.view()) != not_one_of.end()))
      return std::nullopt;
  }
  read_package_after();
  read_second_half_of_range();
  read_sums();
  skip_repeats();
  skip_container();
  read_noun_behind();
  read_trailing_words();
  finish();
  return std::move(out_);
}

/// Past list bullets and the like before a line.
std::size_t skip_bullets(std::string_view text) {
  std::size_t at = skip_space(text, 0);
  for (;;) {
    const auto rest = text.substr(at);
    std::size_t size = 0;
    if (rest.starts_with('*') || rest.starts_with('|')) size = 1;
    if (rest.starts_with("\xC2\xB7")) size = 2;                                             // ·
    for (const std::string_view bullet : {"\xE2\x80\xA2", "\xE2\x96\xA2", "\xE2\x96\xAA"})  // • ▢ ▪
      if (rest.starts_with(bullet)) size = 3;
    if (const auto dash = dash_at(text, at); dash != 0 && is(text, at + dash, ' ')) size = dash;
    if (size == 0) return at;
    at = skip_space(text, at + size);
  }
}

/// An amount further on in the line: behind a comma, colon, dash or bracket, or with a weight or volume unit
/// anywhere that is not a cut ("in 1-inch pieces") or a yield.
std::optional<Amount> search(std::string_view text, Units units) {
  char mark = 0;
  Letters before;
  for (std::size_t at = 0; at < text.size();) {
    const char c = text[at];
    if (c == ',' || c == ':' || c == '(' || c == '|' || c == ';' || c == '-') {
      mark = c;
      ++at;
      continue;
    }
    const bool edge = at == 0 || (!ascii_letter(text, at - 1) && !ascii_digit(text, at - 1));
    const bool of = before.is("of") || before.is("from") || before.is("about") || before.is("approx") ||
                    before.is("approximately");
    const auto number =
        edge && (!ascii_letter(text, at) || mark != 0 || of) ? read_number(text, at) : std::nullopt;
    if (number) {
      Reader reader(text, units);
      auto amount = reader.read(at);
      if (amount && amount->stated_any()) {
        const bool cut = before.is("in") || before.is("into") || before.is("yield") || before.is("makes") ||
                         before.is("per") || before.is("each");
        const bool to_the_end = skip_space(text, amount->end) >= text.size() || text[amount->end] == ',' ||
                                text[amount->end] == ')';
        if (!cut && (reader.unit_with_figures() || of || (mark != 0 && (reader.has_unit() || to_the_end)))) {
          if (before.is("about") || before.is("approx") || before.is("approximately")) amount->about = true;
          return amount;
        }
        at = std::max(amount->end, number->end);
        continue;
      }
      at = number->end;
      continue;
    }
    const Letters word(text, at);
    if (word.end() > at) {
      before = word;
      at = word.end();
      if (c != ' ') mark = 0;
    } else {
      ++at;
    }
  }
  return std::nullopt;
}

}  // namespace

std::optional<Amount> read_amount(std::string_view line, Units units, bool anywhere) {
  Reader reader(line, units);
  if (auto amount = reader.read(skip_bullets(line))) return amount;
  return anywhere ? search(line, units) : std::nullopt;
}

}  // namespace sealworthy::quantity
