#include "foods/name_region.hpp"

#include <algorithm>

namespace sealworthy::foods {
namespace {

constexpr std::size_t longest_list_item = 4;  ///< words of one item of "corn, peanut or vegetable oil"

bool ends_sentence(char mark) { return mark == ';' || mark == ':' || mark == '.'; }

class Finder {
 public:
  Finder(const Tokens& tokens, std::size_t from) : tokens_(tokens), at_(from) {}
  NameRegion run();

 private:
  enum class Step { take, pass, stop };
  Step look(const Token& token);
  Step look_at_joiner(const Token& token);
  void take();
  void close_part();
  [[nodiscard]] bool stopped_by_mark(const Token& token);
  [[nodiscard]] bool list_goes_on() const;
  [[nodiscard]] bool name_follows(std::size_t i) const;
  [[nodiscard]] bool has_word_of_weight() const;
  [[nodiscard]] bool inside_name() const;

  const Tokens& tokens_;
  NameRegion region_;
  std::size_t at_;
  std::size_t depth_ = 0;
  Part part_;
  bool open_ = false;  ///< part_ holds something
  bool head_ = false;  ///< the noun has come
  bool past_bracket_ = false;
  std::size_t covered_ = 0;  ///< tokens before this one belong to a name that has started
};

void Finder::take() {
  if (!open_) part_.first = at_;
  part_.last = at_;
  open_ = true;
}

void Finder::close_part() {
  if (open_) region_.parts.push_back(part_);
  open_ = false;
}

/// True if the open part holds more than states ("peeled and" ... goes on to the name).
bool Finder::has_word_of_weight() const {
  for (std::size_t i = part_.first; i <= part_.last; ++i) {
    const auto& token = tokens_[i];
    if (at_depth(token, depth_) &&
        (!token.is(role_state | role_adverb | role_size | role_filler) || tokens_.match(i).found()))
      return true;
  }
  return false;
}

/// True if a name that started before this token goes on behind it.
bool Finder::inside_name() const {
  for (std::size_t i = part_.first; i < at_; ++i)
    if (tokens_.match(i).found() && tokens_.match(i).last >= at_) return true;
  return false;
}

/// True if a name starts at token i, behind words that only describe.
bool Finder::name_follows(std::size_t i) const {
  for (; i < tokens_.size(); ++i) {
    const auto& token = tokens_[i];
    if (token.amount_start) return false;
    if (!at_depth(token, depth_)) continue;
    if (tokens_.match(i).found()) return true;
    if (token.number || ends_sentence(token.before) || token.before == ',') return false;
    if (!token.is(light_roles | role_and | role_or | role_of | role_counter))
      return token.food_word || !token.known;
  }
  return false;
}

/// "corn, *peanut or vegetable oil*": the comma is one of a list if names stand between it and an "or".
bool Finder::list_goes_on() const {
  std::size_t words = 0;
  std::size_t covered = 0;
  bool at_start = true;
  for (std::size_t i = at_; i < tokens_.size(); ++i) {
    const auto& token = tokens_[i];
    if (!at_depth(token, depth_)) continue;
    if (i > at_ && (ends_sentence(token.before) || token.number)) return false;
    if (token.is(role_or | role_and)) return !at_start && name_follows(i + 1);
    if (i > at_ && token.before == ',') {
      at_start = true;
      words = 0;
    }
    const auto& match = tokens_.match(i);
    if (match.found()) covered = std::max(covered, match.last + std::size_t{1});
    const bool describes = token.is(role_quality) && !token.is(role_state);
    if (at_start && !match.found() && token.known && !describes) return false;
    if (i >= covered && token.is(role_ends)) return false;
    at_start = false;
    if (++words > longest_list_item) return false;
  }
  return false;
}

bool Finder::stopped_by_mark(const Token& token) {
  if (token.before != 0 && open_ && tokens_[part_.last].is(role_counter)) head_ = true;  // "2 lb ribs, cut"
  if (at_ < covered_) return false;
  const bool list =
      token.before == ',' && !token.is(role_or | role_and) && open_ && has_word_of_weight() && list_goes_on();
  if (list) {
    close_part();
    head_ = false;
    return false;
  }
  if (!head_) return false;
  if (ends_sentence(token.before)) return true;
  if (token.before == ',') {
    if (token.is(role_or | role_and)) return !name_follows(at_ + 1);
    return true;
  }
  return past_bracket_ && !token.is(role_or | role_and);
}

Finder::Step Finder::look_at_joiner(const Token& token) {
  if (!open_ || !has_word_of_weight()) return Step::pass;
  if (!name_follows(at_ + 1)) return head_ ? Step::stop : Step::pass;
  close_part();
  head_ = false;
  region_.either = region_.either || token.is(role_or);
  return Step::pass;
}

Finder::Step Finder::look(const Token& token) {
  if (token.slash && open_ && has_word_of_weight() && name_follows(at_) && !inside_name()) {
    close_part();
    region_.either = true;
  }
  if (at_ < covered_) {
    head_ = true;
    return Step::take;
  }
  const bool percentage = at_ + 1 < tokens_.size() && (tokens_[at_ + 1].says & says_percent) != 0;
  if (token.number) return head_ && !percentage ? Step::stop : Step::pass;
  if (token.is(role_or | role_and)) return look_at_joiner(token);
  if (token.is(role_of)) return open_ ? Step::take : Step::pass;
  if (token.is(role_ends | role_state) && token.is(role_ends | role_plain) && !open_ &&
      at_ + 1 < tokens_.size() && tokens_[at_ + 1].is(role_of))
    return Step::take;  // "peel of 1 orange"
  if (token.is(role_ends)) return head_ || (open_ && has_word_of_weight()) ? Step::stop : Step::pass;
  if (token.is(role_plain)) return head_ ? Step::stop : Step::pass;
  if (!token.is(light_roles | role_counter)) head_ = true;
  return Step::take;
}

NameRegion Finder::run() {
  bool started = false;
  for (; at_ < tokens_.size(); ++at_) {
    const auto& token = tokens_[at_];
    if (token.spent) {
      const bool of_amount = at_ > 0 && tokens_[at_ - 1].is(role_of);  // "juice of 2 lemons"
      if (head_ && token.amount_start && token.depth <= depth_ && !of_amount) break;
      continue;
    }
    if (!started) {
      depth_ = token.depth;
      started = true;
    }
    if (token.depth > depth_) {
      past_bracket_ = true;
      continue;
    }
    if (token.depth < depth_) {
      if (head_) break;
      depth_ = token.depth;  // "(packed) brown sugar": the bracket before the name was a remark
      open_ = false;
    }
    if (stopped_by_mark(token)) break;
    past_bracket_ = false;
    if (const auto& match = tokens_.match(at_); match.found())
      covered_ = std::max(covered_, match.last + std::size_t{1});
    const Step step = look(token);
    if (step == Step::stop) break;
    if (step == Step::take) take();
  }
  close_part();
  region_.end = at_;
  return region_;
}

}  // namespace

NameRegion find_name(const Tokens& tokens, std::size_t from) { return Finder(tokens, from).run(); }

}  // namespace sealworthy::foods
