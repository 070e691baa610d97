#include "foods/remarks.hpp"

#include <algorithm>
#include <charconv>

namespace sealworthy::foods {
namespace {

constexpr std::size_t denial_reach = 3;   ///< words that a "not" reaches forward
constexpr double grain_per_percent = 10;  ///< vinegar of 50 grain is 5 percent (common practice)
constexpr double strongest_percent = 30;  ///< beyond it the figure says something else ("100% juice")

bool clause_ends(char mark) { return mark == ';' || mark == '.' || mark == '(' || mark == ')'; }

/// True if a "not" stands shortly before token i in the same clause.
bool denied(const Tokens& tokens, std::size_t i) {
  for (std::size_t back = 1; back <= denial_reach && back <= i; ++back) {
    if (tokens[i - back + 1].before != 0) return false;
    if ((tokens[i - back].says & says_denial) != 0) return true;
    if (!tokens[i - back].is(role_adverb | role_filler | role_ends | role_or | role_and | role_state))
      return false;
  }
  return false;
}

bool has_state(const Tokens& tokens, std::size_t i) {
  return i < tokens.size() && tokens[i].state != no_state;
}

/// The state stands beside an "or" and another state.
bool in_choice(const Tokens& tokens, std::size_t i) {
  const std::size_t behind = i + tokens[i].length;
  if (behind < tokens.size() && tokens[behind].is(role_or) && has_state(tokens, behind + 1)) return true;
  if (i < 2 || !tokens[i - 1].is(role_or)) return false;
  for (std::size_t back = 2; back <= i && back <= 4; ++back)
    if (has_state(tokens, i - back)) return i - back + tokens[i - back].length == i - 1;
  return false;
}

bool length_unit(const Token& token) { return (token.says & says_length) != 0; }

std::optional<double> value_of(const Token& token) {
  double value = 0;
  const auto* end = token.text.data() + token.text.size();
  const auto result = std::from_chars(token.text.data(), end, value);
  return result.ec == std::errc() && result.ptr == end ? std::optional(value) : std::nullopt;
}

/// "5%", "5 percent acidity", "50 grain": only in a line that speaks of acid.
std::optional<double> strength(const Tokens& tokens) {
  bool of_acid = false;
  for (std::size_t i = 0; i < tokens.size(); ++i) of_acid = of_acid || (tokens[i].says & says_acidity) != 0;
  if (!of_acid) return std::nullopt;
  for (std::size_t i = 0; i + 1 < tokens.size(); ++i) {
    if (!tokens[i].number) continue;
    const auto value = value_of(tokens[i]);
    if (!value) continue;
    if ((tokens[i + 1].says & says_percent) != 0 && *value <= strongest_percent) return value;
    if (tokens[i + 1].text == "grain" && *value <= strongest_percent * grain_per_percent)
      return *value / grain_per_percent;
  }
  return std::nullopt;
}

/// "cut in 1-inch pieces", "3- to 4-inch": the figures before a unit of length, unless they tell what is left
/// on or cut away ("leave 1 inch of stem"). Of several the last: "3 to 5 inches long, in 1/4-inch slices" is
/// about the slices.
std::optional<Interval<PieceSize>> piece(const Tokens& tokens) {
  std::optional<Interval<PieceSize>> last;
  for (std::size_t unit = 1; unit < tokens.size(); ++unit) {
    if (tokens[unit].spent || !length_unit(tokens[unit]) || !tokens[unit - 1].number) continue;
    std::size_t first = unit - 1;
    const auto joins = [&](std::size_t i) {
      return tokens[i].number || tokens[i].text == "to" || tokens[i].text == "or" || length_unit(tokens[i]);
    };
    while (first > 0 && joins(first - 1) && tokens[first].before == 0 && !tokens[first - 1].spent) --first;
    while (first < unit && !tokens[first].number) ++first;
    bool left_on = false;
    for (std::size_t back = 1; back <= denial_reach && back <= first; ++back)
      left_on = left_on || (tokens[first - back].says & says_leave_on) != 0;
    if (unit + 1 < tokens.size()) left_on = left_on || (tokens[unit + 1].says & says_leave_on) != 0;
    if (left_on) continue;
    auto text = tokens.line().substr(tokens[first].begin, tokens[unit].end - tokens[first].begin);
    auto size = quantity::read_piece_size(text);
    if (const auto* found = std::get_if<Interval<PieceSize>>(&size)) last = *found;
  }
  return last;
}

/// "per jar", "to each quart jar", but not "to each quart of juice".
void read_per_jar(const Tokens& tokens, std::size_t i, bool amount_before, quantity::Units units,
                  LineReading& reading) {
  const std::size_t next = i + tokens[i].length;
  if (next >= tokens.size()) return;
  if (tokens[i].depth > 0 && amount_before) {
    // "(about 35 pods per jar)" tells of another figure than the line's
    for (std::size_t back = i; back > 0 && tokens[back].depth > 0; --back)
      if (tokens[back - 1].depth > 0 && tokens[back - 1].number) return;
  }
  for (std::size_t count = std::min<std::size_t>(3, tokens.size() - next); count > 0; --count) {
    const std::size_t last = next + count - 1;
    bool broken = tokens[next].is(role_of);
    for (std::size_t j = next + 1; j <= last; ++j)
      broken = broken || tokens[j].before != 0 || tokens[j].is(role_of);
    if (broken) continue;
    const bool of = last + 1 < tokens.size() && tokens[last + 1].is(role_of) && tokens[last + 1].before == 0;
    const auto text = tokens.line().substr(tokens[next].begin, tokens[last].end - tokens[next].begin);
    if (count == 1 && (tokens[next].text == "jar" || tokens[next].text == "jars")) {
      reading.per_jar = true;
      return;
    }
    auto jar = quantity::read_jar(text, units);
    if (auto* found = std::get_if<quantity::JarText>(&jar)) {
      if (of) return;
      reading.per_jar = true;
      reading.per_jar_of = std::move(*found);
      return;
    }
  }
}

}  // namespace

bool other_figure(const Tokens& tokens, std::size_t i) {
  std::size_t unit = i + 1;
  while (unit + 1 < tokens.size() && unit < i + 3 &&
         (tokens[unit].number || (tokens[unit + 1].number && tokens[unit].is(role_or | role_ends))))
    ++unit;
  if (unit >= tokens.size()) return false;
  const auto& next = tokens[unit];
  return (next.says & says_percent) != 0 || length_unit(next) || next.text == "grain";
}

TellsStates read_states(const Tokens& tokens, const Index& index, std::size_t from, std::size_t to) {
  TellsStates told;
  bool hedged = false;
  std::uint8_t hedge_depth = 0;
  for (std::size_t i = from; i < to; ++i) {
    const auto& token = tokens[i];
    if (clause_ends(token.before) || token.depth != hedge_depth) hedged = false;
    if ((token.says & says_hedge) != 0) {
      hedged = true;
      hedge_depth = token.depth;
    }
    if (token.state == no_state || hedged || token.spent) continue;
    StateId state = token.state;
    if (denied(tokens, i)) state = index.phrases.state(state).denied;
    if (state == no_state) continue;
    const bool choice = in_choice(tokens, i);
    const auto known =
        std::find_if(told.begin(), told.end(), [&](const Told& t) { return t.state == state; });
    if (known == told.end())
      told.push_back({state, choice});
    else
      known->choice = known->choice && choice;
  }
  return told;
}

void read_remarks(const Tokens& tokens, quantity::Units units, LineReading& reading) {
  std::uint32_t said = 0;
  bool amount_before = false;
  for (std::size_t i = 0; i < tokens.size(); ++i) {
    const auto& token = tokens[i];
    said |= token.says;
    amount_before = amount_before || (token.spent && token.depth == 0);
    if ((token.says & says_per_jar) != 0 && !reading.per_jar)
      read_per_jar(tokens, i, amount_before, units, reading);
  }
  reading.to_taste = (said & says_to_taste) != 0;
  reading.optional = reading.to_taste || (said & says_optional) != 0;
  reading.not_eaten = (said & says_not_eaten) != 0 && (said & says_in_jar) == 0 && !reading.per_jar;
  if ((said & says_acidity) != 0) reading.strength_percent = strength(tokens);
  if ((said & says_length) != 0) reading.piece = piece(tokens);
}

}  // namespace sealworthy::foods
