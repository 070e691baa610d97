#include <algorithm>
#include <array>

#include "quantity/amount_reader.hpp"
#include "quantity/lexicon.hpp"
#include "quantity/scan.hpp"

namespace sealworthy::quantity {
namespace {

enum class Bound { none, about, at_most, at_least, between };

/// Phrases before a figure that begin with a word of Role::lead.
struct Lead {
  std::string_view phrase;
  Bound bound;
};
constexpr std::array leads{
    Lead{"up to", Bound::at_most},
    Lead{"at most", Bound::at_most},
    Lead{"no more than", Bound::at_most},
    Lead{"not more than", Bound::at_most},
    Lead{"maximum", Bound::at_most},
    Lead{"max", Bound::at_most},
    Lead{"at least", Bound::at_least},
    Lead{"no less than", Bound::at_least},
    Lead{"not less than", Bound::at_least},
    Lead{"minimum", Bound::at_least},
    Lead{"not quite", Bound::about},
    Lead{"between", Bound::between},
    Lead{"from", Bound::none},
    Lead{"exactly", Bound::none},
    Lead{"only", Bound::none},
};

/// Nouns that are taken as the unit though they stand behind the name. Where `after` is set the noun is one
/// only behind these words: in "4 bay leaves", "2 vanilla pods", "1 cinnamon stick", "4 lettuce heads", "3
/// pork ribs" it is a part of the name. Settled by what the labelled lines of tests/data/labelled-lines.tsv
/// call the unit.
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

bool is_noun_of(const NounBehind& entry, const Unit& unit, const Letters& before) {
  if (entry.unit != unit.name) return false;
  if (entry.after[0].empty()) return true;
  return std::any_of(entry.after.begin(), entry.after.end(),
                     [&](std::string_view name) { return !name.empty() && before.is(name); });
}

std::size_t past_stop(std::string_view text, std::size_t at) { return char_at(text, at, '.') ? at + 1 : at; }

}  // namespace

std::size_t AmountReader::read_leads(std::size_t at) {
  for (;;) {
    at = skip_space(text_, at);
    if (char_at(text_, at, '~') || char_at(text_, at, '@')) {
      out_.about = true;
      ++at;
      continue;
    }
    const Letters word(text_, at);
    const auto role = meaning(word).role;
    if (role == Role::about) {
      out_.about = true;
      at = past_stop(text_, word.end());
    } else if (word.is("level")) {
      at = word.end();
    } else if (role == Role::lead) {
      std::optional<std::size_t> end;
      for (const auto& lead : leads) {
        if (!(end = phrase_at(text_, at, lead.phrase))) continue;
        if (lead.bound == Bound::about) out_.about = true;
        if (lead.bound == Bound::at_most) out_.at_most = true;
        if (lead.bound == Bound::at_least) out_.at_least = true;
        if (lead.bound == Bound::between) between_ = true;
        break;
      }
      if (!end) return at;
      at = past_stop(text_, *end);
    } else {
      return at;
    }
  }
}

/// Size words ("medium", "small to medium", "extra large", "med.-size"); `with_modifiers` also words that
/// change nothing ("level", "thin") or make the figure inexact ("scant"). Two sizes leave the size open.
std::size_t AmountReader::read_sizes(std::size_t at, bool with_modifiers) {
  std::string_view size;
  bool two_sizes = false;
  bool extra = false;
  for (int i = 0; i < 6; ++i) {
    const auto word = next_word(text_, at);
    const auto& means = meaning(word);
    const auto after = past_stop(text_, word.end());
    if (means.role == Role::size) {
      two_sizes = two_sizes || !size.empty();
      size = means.size;
      const auto tail = next_word(text_, after);
      at = tail.is("size") || tail.is("sized") ? tail.end() : after;
    } else if (word.is("extra") && meaning(next_word(text_, word.end())).role == Role::size) {
      extra = true;
      at = word.end();
    } else if (!size.empty() && (word.is("to") || word.is("or")) &&
               meaning(next_word(text_, word.end())).role == Role::size) {
      at = word.end();
    } else if (word.is("ea")) {
      at = after;
    } else if (with_modifiers && (means.role == Role::modifier || means.role == Role::about)) {
      out_.about = out_.about || means.role == Role::about;
      at = word.end();
    } else {
      break;
    }
  }
  if (size.empty()) return at;
  out_.size.clear();
  if (!two_sizes) out_.size.append(extra ? "extra " : "").append(size);
  return at;
}

/// The unit at `at`, with size words and modifiers before it. Without a unit only size words are taken ("6
/// medium onions"). `only_counts`: a weight or volume is no unit here (behind "2 8-inch").
bool AmountReader::read_unit(std::size_t at, bool only_counts) {
  const bool glued = letter_at(text_, at);
  const auto next = skip_space(text_, at);
  static constexpr std::array<std::string_view, 3> parts_of{"of a", "of an", "of the"};  // "1/3 of a bunch"
  for (const auto of : parts_of)
    if (const auto end = phrase_at(text_, next, of)) at = *end;
  const bool about_before = out_.about;
  const auto size_before = out_.size;
  auto place = at;
  auto match = unit_at(text_, past_hyphen(text_, at), glued);
  if (!match) {
    place = read_sizes(at, true);
    if (place != at) match = unit_at(text_, past_hyphen(text_, place));
  }
  if (match && match->unit->kind == Kind::dozen) {  // "2 dozen heads": 24 heads
    const auto of = read_sizes(match->end, true);
    const auto more = unit_at(text_, past_hyphen(text_, of));
    if (more && more->unit->counts()) {
      out_.stated = out_.stated * 12;
      match = more;
    }
  }
  // "12 whole cloves" are the spice, "2 whole cloves garlic" are not
  const bool spice = match && place != at && match->unit->name == "clove" &&
                     phrase_at(text_, past_hyphen(text_, at), "whole") &&
                     !phrase_at(text_, match->end, "garlic") && !phrase_at(text_, match->end, "of garlic");
  if (match && !spice && !(only_counts && match->unit->measures())) {
    unit_ = match->unit;
    unit_units_ = match->said.value_or(units_);
    end_ = match->end;
    if (unit_->measures()) out_.size = size_before;
    return true;
  }
  if (place == at) return false;
  out_.about = about_before;
  out_.size = size_before;
  end_ = std::max(end_, read_sizes(at, false));
  return false;
}

/// "pinch of salt", "a generous pinch", "handful of dill": no figure. Other pieces need an "of" ("strips of
/// lemon peel"): without it they begin a name ("stick cinnamon").
bool AmountReader::read_without_figure(std::size_t at) {
  if (!letter_at(text_, at)) return false;
  const Letters first(text_, at);
  const bool one = meaning(first).role == Role::article;
  const auto place = past_hyphen(text_, read_sizes(one ? first.end() : at, true));
  const auto match = unit_at(text_, place);
  const auto stands = [&] {
    if (!match) return false;
    if (match->unit->kind == Kind::imprecise) return true;
    if (one || !match->unit->counts()) return false;
    static constexpr std::array<std::string_view, 4> alone{"handful", "bunch", "sprig", "knob"};
    return std::find(alone.begin(), alone.end(), match->unit->name) != alone.end() ||
           phrase_at(text_, match->end, "of").has_value();
  };
  if (!stands()) {
    out_.size.clear();
    return false;
  }
  unit_ = match->unit;
  end_ = match->end;
  return true;
}

/// "6 garlic cloves", "2 celery stalks": see nouns_behind.
void AmountReader::read_noun_behind() {
  if (unit_ != nullptr) return;
  auto at = end_;
  Letters before;
  for (int i = 0; i < 4; ++i) {
    const auto word = next_word(text_, at);
    const auto& means = meaning(word);
    if (word.empty() || means.role == Role::joint || word.is("with") || word.is("in") || word.is("for") ||
        word.is("of"))
      return;
    if (i > 0 && means.role == Role::unit &&
        std::any_of(nouns_behind.begin(), nouns_behind.end(),
                    [&](const NounBehind& entry) { return is_noun_of(entry, *means.unit, before); })) {
      unit_ = means.unit;
      out_.noun_begin = word.begin();
      out_.noun_end = word.end();
      return;
    }
    before = word;
    at = word.end();
  }
}

void AmountReader::read_trailing_words() {
  const auto at = skip_space(text_, end_);
  if (const auto so = phrase_at(text_, at, "or so")) {
    out_.about = true;
    end_ = *so;
  } else if (const auto more = phrase_at(text_, at, "or more")) {
    out_.at_least = true;
    end_ = *more;
  } else if (const auto less = phrase_at(text_, at, "or less")) {
    out_.at_most = true;
    end_ = *less;
  } else if (unit_ != nullptr && char_at(text_, at, '+') && !digit_at(text_, skip_space(text_, at + 1))) {
    out_.at_least = true;
    end_ = at + 1;
  }
}

}  // namespace sealworthy::quantity
