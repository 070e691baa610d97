#include "foods/line_amounts.hpp"

#include <utility>

#include "foods/remarks.hpp"

namespace sealworthy::foods {
namespace {

constexpr std::size_t most_amounts = 8;  ///< further amounts of one line that are read
constexpr int most_tries = 4;            ///< figures before the amount that are none ("5% vinegar, 2 cups")

void shift(quantity::Amount& amount, std::size_t by) {
  amount.begin += by;
  amount.end += by;
  if (amount.noun_end == 0) return;
  amount.noun_begin += by;
  amount.noun_end += by;
}

void spend(Tokens& tokens, const quantity::Amount& amount) {
  tokens.spend(amount.begin, amount.end, true);
  if (amount.noun_end != 0) tokens.spend(amount.noun_begin, amount.noun_end, false);
}

/// The last figure of an amount, tokens.size() if it has none.
std::size_t last_figure(const Tokens& tokens, const quantity::Amount& amount) {
  std::size_t last = tokens.size();
  for (std::size_t i = 0; i < tokens.size() && tokens[i].begin < amount.end; ++i)
    if (tokens[i].number && tokens[i].end > amount.begin) last = i;
  return last;
}

/// True if what was read as an amount is a percentage or a length, told by the word behind it.
bool is_other_figure(const Tokens& tokens, const quantity::Amount& amount) {
  const auto last = last_figure(tokens, amount);
  return last < tokens.size() && other_figure(tokens, last) && tokens[last + 1].begin >= amount.end;
}

void read_first(Tokens& tokens, quantity::Units units, LineAmounts& amounts) {
  std::size_t from = 0;
  for (int tries = 0; tries < most_tries; ++tries) {
    auto amount = quantity::read_amount(tokens.line().substr(from), units, true);
    if (!amount) return;
    shift(*amount, from);
    if (!is_other_figure(tokens, *amount)) {
      spend(tokens, *amount);
      amounts.first = std::move(*amount);
      return;
    }
    from = tokens[last_figure(tokens, *amount) + 1].end;
  }
}

/// "garlic cloves (4 per jar)", "optional: 2-3 hot peppers": a count that stands for the whole line.
bool counts_for_line(const Tokens& tokens, const FurtherAmount& further) {
  if (!further.amount.unit.empty()) return true;
  if (tokens[further.token].before == ':') return true;
  std::size_t next = further.token;
  while (next < tokens.size() && tokens[next].spent) ++next;
  if (next < tokens.size()) return (tokens[next].says & says_per_jar) != 0;
  return tokens[further.token].depth == 0;
}

}  // namespace

LineAmounts read_amounts(Tokens& tokens, quantity::Units units) {
  LineAmounts amounts;
  read_first(tokens, units, amounts);
  for (std::size_t i = 0; i < tokens.size() && amounts.further.size() < most_amounts; ++i) {
    const bool in_words = tokens[i].is(role_number);
    if (tokens[i].spent || !(tokens[i].number || in_words) || other_figure(tokens, i)) continue;
    if (tokens[i].lemma != no_word && tokens[i].number && tokens.in_name(i)) continue;
    auto amount = quantity::read_amount(tokens.line().substr(tokens[i].begin), units);
    if (!amount || amount->begin != 0 || !amount->stated_any() || (in_words && amount->unit.empty()))
      continue;
    shift(*amount, tokens[i].begin);
    if (is_other_figure(tokens, *amount)) continue;
    spend(tokens, *amount);
    amounts.further.push_back({i, std::move(*amount)});
  }
  if (amounts.first.end == 0 && !amounts.further.empty() &&
      counts_for_line(tokens, amounts.further.front())) {
    amounts.first = std::move(amounts.further.front().amount);
    amounts.further.erase(amounts.further.begin());
  }
  return amounts;
}

}  // namespace sealworthy::foods
