#include "phrases/negation.hpp"

#include <algorithm>
#include <bit>

namespace sealworthy::phrases {
namespace {

constexpr std::size_t noun_phrase = 6;  ///< words that "no" and "without" reach at most

/// A list of words, for the few turns of phrase that one word can't tell.
template <std::size_t N>
bool one_of(std::string_view word, const std::array<std::string_view, N>& list) {
  return std::find(list.begin(), list.end(), word) != list.end();
}

constexpr std::array<std::string_view, 10> reasons{"need", "reason", "point",  "sense", "use",
                                                   "call", "cause",  "longer", "good",  "way"};
constexpr std::array<std::string_view, 8> comparisons{"more",    "less",   "fewer", "later",
                                                      "earlier", "higher", "lower", "longer"};
constexpr std::array<std::string_view, 4> mere{"only", "just", "merely", "least"};

class Analysis {
 public:
  Analysis(std::span<const Token> tokens, Polarity& out) : tokens_(tokens), out_(out) {}

  void run() {
    const auto n = tokens_.size();
    std::fill_n(out_.covers.begin(), n, 0U);
    std::fill_n(out_.own.begin(), n, 0U);
    std::fill_n(out_.supposed.begin(), n, false);
    for (std::size_t i = 0; i < n; ++i) {
      if (is(i, condition)) suppose(i);
      if (deniers_ < 32) deny_from(i);
    }
    for (const auto& [from, first, bit] : backward_) {
      const auto covered = bit | out_.covers[from];
      for (std::size_t j = first; j < from; ++j) out_.covers[j] |= covered;
    }
  }

 private:
  struct Backward {
    std::size_t from, first;
    std::uint32_t bit;
  };

  [[nodiscard]] bool is(std::size_t i, std::uint32_t grammar) const {
    return i < tokens_.size() && (tokens_[i].grammar & grammar) != 0;
  }
  [[nodiscard]] std::string_view word(std::size_t i) const {
    return i < tokens_.size() ? tokens_[i].text : std::string_view();
  }
  [[nodiscard]] char mark(std::size_t i) const { return i < tokens_.size() ? tokens_[i].before : '.'; }

  /// "if the boil stops, ...": all words to the end of the clause are only supposed; "even if" tells.
  void suppose(std::size_t i) {
    if (i > 0 && (word(i - 1) == "even" || word(i - 1) == "as")) return;
    out_.supposed[i] = true;
    for (std::size_t j = i + 1; j < tokens_.size(); ++j) {
      if (mark(j) != 0 || is(j, softener) || word(j) == "then") break;
      out_.supposed[j] = true;
    }
  }

  /// "no more than", "no matter", "not only", "whether or not", "if not," deny nothing.
  [[nodiscard]] bool idle(std::size_t i) const {
    const auto here = word(i);
    const auto next = word(i + 1);
    if (here == "no" && (mark(i + 1) != 0 || next == "matter" || next == "doubt")) return true;
    if (here == "no" && one_of(next, comparisons) && word(i + 2) == "than") return true;
    if (here == "not" && one_of(next, mere)) return true;
    if (here == "not" && i > 0 && (word(i - 1) == "or" || word(i - 1) == "if" || word(i - 1) == "why"))
      return mark(i + 1) != 0 || word(i - 1) == "why" || i + 1 == tokens_.size();
    if (here == "without" && next == "fail") return true;
    if (here == "waste") return word(i + 1) != "of";
    if (here == "nothing" && next == "but") return true;
    if (here == "none") return word(i + 1) == "the";
    if (i > 0 && here == word(i - 1)) return true;
    return false;
  }

  /// "leave out the salt", "leave off the weight"; but not "leave out overnight".
  [[nodiscard]] bool leaves_out(std::size_t i) const {
    const auto here = word(i);
    if (here != "leave" && here != "leaving" && here != "left") return false;
    if (word(i + 1) != "out" && word(i + 1) != "off") return false;
    return mark(i + 2) == 0 && is(i + 2, determiner) && i + 2 < tokens_.size();
  }

  /// "little need to wipe", "hardly necessary", "the trouble of wiping".
  [[nodiscard]] bool spares(std::size_t i) const {
    const auto here = word(i);
    const auto next = word(i + 1);
    if (here == "little" || here == "hardly" || here == "scarcely")
      return one_of(next, reasons) || next == "necessary" || next == "needed" || next == "worth";
    return (here == "trouble" || here == "bother" || here == "chore") && next == "of";
  }

  void deny_from(std::size_t i) {
    if (leaves_out(i) || spares(i)) return cover(i, phrase_end(i + 2), false);
    if (!is(i, denier | noun_denier | denying_verb | denying_word | instead_of) || idle(i)) return;
    if (is(i, denier) || (is(i, denying_word) && !is(i, noun_denier | denying_verb))) {
      cover(i, clause_end(i + 1), true);
    } else if (is(i, noun_denier)) {
      const bool verbal = word(i) == "no" && one_of(word(i + 1), reasons);
      const bool predicate = i > 0 && (word(i) == "nothing" || (is(i - 1, be_form) && word(i) == "no"));
      cover(i, verbal || predicate ? clause_end(i + 1) : phrase_end(i + 1), predicate);
    } else if (is(i, denying_verb)) {
      verb(i);
    } else {
      instead(i);
    }
  }

  void verb(std::size_t i) {
    const bool passive = i > 0 && is(i - 1, be_form);
    if (passive) return cover(i, i + 1, true);
    const auto here = word(i);
    if (here.starts_with("fail")) {
      if (word(i + 1) == "to") cover(i, std::min(i + 3, tokens_.size()), false);
      return;
    }
    if (here.starts_with("skip") || here.starts_with("omit") || here == "ditch" || here == "eliminate")
      return cover(i, phrase_end(i + 1), false);
    cover(i, clause_end(i + 1), false);
  }

  void instead(std::size_t i) {
    const auto here = word(i);
    const auto next = word(i + 1);
    if (here == "stop" || here == "quit") {
      if (next.ends_with("ing")) cover(i, clause_end(i + 1), false);
      return;
    }
    const bool of = here == "instead" || here == "lieu" ? next == "of"
                    : here == "opposed"                 ? next == "to"
                                                        : next == "than";
    if (of) cover(i, phrase_end(i + 2), false);
  }

  /// Covers (i, end) and, if `back`, the clause before i.
  void cover(std::size_t i, std::size_t end, bool back) {
    const auto bit = 1U << deniers_++;
    out_.own[i] = bit;
    for (std::size_t j = i + 1; j < end; ++j) out_.covers[j] |= bit;
    if (back && !in_relative(i)) backward_[backs_++] = {i, clause_start(i), bit};
    if (backs_ == backward_.size()) backs_ = backward_.size() - 1;
  }

  [[nodiscard]] bool in_relative(std::size_t i) const {
    for (std::size_t back = 1; back <= 3 && back <= i; ++back) {
      if (mark(i - back + 1) != 0) return false;
      const auto before = word(i - back);
      if (before == "that" || before == "which" || before == "who") return true;
    }
    return false;
  }

  [[nodiscard]] std::size_t clause_start(std::size_t i) const {
    while (i > 0 && mark(i) == 0 && !is(i - 1, turn | joiner_and | joiner_or)) --i;
    return i;
  }

  /// A comma goes on with a list when an "or" closes it: "do not shake, tilt or invert". Its items are short.
  [[nodiscard]] bool list_goes_on(std::size_t comma) const {
    std::size_t item = comma;
    for (auto j = comma; j < tokens_.size(); ++j) {
      if (mark(j) != 0 && mark(j) != ',') return false;
      if (mark(j) == ',') item = j;
      if (is(j, turn | joiner_and)) return false;
      if (is(j, joiner_or)) return true;
      if (j - item >= 2) return false;
    }
    return false;
  }

  [[nodiscard]] std::size_t clause_end(std::size_t begin) const {
    const bool relative_clause = begin > 0 && in_relative(begin - 1);
    bool aside = false;  // "do not, whatever you read, ..."
    for (auto j = begin; j < tokens_.size(); ++j) {
      const auto m = mark(j);
      if (m == ',' || m == ':') {
        if (j == begin)
          aside = m == ',';
        else if (aside)
          aside = false;
        else if (m == ':' || !list_goes_on(j))
          return j;
      } else if (m != 0 && !(m == '(' || m == ')')) {
        return j;
      }
      if (j > begin && (is(j, turn) || is(j, softener))) return j;
      if (word(j) == "nor" && j > begin) return j;
      if (relative_clause && j > begin && is(j, be_form | finite)) return j;
    }
    return tokens_.size();
  }

  [[nodiscard]] std::size_t phrase_end(std::size_t begin) const {
    const auto last = std::min(begin + noun_phrase, tokens_.size());
    if (begin < tokens_.size() && begin + 1 < tokens_.size() && tokens_[begin].hyphened) return begin + 1;
    for (auto j = begin; j < last; ++j) {
      const auto m = mark(j);
      if (m != 0 && j > begin && !(m == ',' && list_goes_on(j))) return j;
      if (is(j, turn | finite) && j > begin) return j;
      if (is(j, softener) && j > begin) return j;
      if (is(j, joiner_and) && is(j + 1, direction | finite | softener | turn)) return j;
      if (word(j) == "nor") return j;
    }
    return last;
  }

  std::span<const Token> tokens_;
  Polarity& out_;
  std::array<Backward, 32> backward_{};
  std::size_t backs_ = 0;
  unsigned deniers_ = 0;
};

}  // namespace

bool Polarity::denied(std::size_t word, std::uint32_t used) const {
  return std::popcount(covers[word] & ~used) % 2 == 1;
}

void analyse(std::span<const Token> tokens, Polarity& out) { Analysis(tokens, out).run(); }

bool takes_back(std::span<const Token> tokens) {
  if (tokens.empty() || tokens.size() > 6) return false;
  const bool denies = (tokens[0].grammar & denier) != 0 ||
                      (tokens.size() > 1 && tokens[0].text == "do" && tokens[1].text == "not");
  if (tokens.size() <= 2)  // "You can't."
    return denies || tokens[0].text == "no" || (tokens.back().grammar & denier) != 0;
  static constexpr std::array<std::string_view, 8> empty{"do",   "not", "it",  "this",
                                                         "that", "so",  "try", "ever"};
  return denies &&
         std::all_of(tokens.begin() + 1, tokens.end(), [](const Token& t) { return one_of(t.text, empty); });
}

}  // namespace sealworthy::phrases
