#include "reading/forms.hpp"

#include <algorithm>

namespace sealworthy::reading {
namespace {

constexpr std::size_t most_forms = 64;

std::vector<std::string> split(std::string_view text) {
  std::vector<std::string> out;
  for (const auto& word : text::Words(text)) out.emplace_back(word.text);
  return out;
}

/// The words of a short text in ASCII lower case, without allocating: enough for a food's name or a state.
/// What is over the room it has is left out.
class ShortWords {
 public:
  explicit ShortWords(std::string_view text) {
    std::size_t start = 0;
    const auto end_word = [&](std::size_t end) {
      if (end > start && count_ < words_.size()) words_[count_++] = {&letters_[start], end - start};
      start = end;
    };
    std::size_t used = 0;
    for (const char c : text) {
      if (used == letters_.size()) break;
      const bool upper = c >= 'A' && c <= 'Z';
      const bool part = upper || (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || (c & '\x80') != 0;
      if (part)
        letters_[used++] = upper ? static_cast<char>(c - 'A' + 'a') : c;
      else
        end_word(used);
    }
    end_word(used);
  }
  [[nodiscard]] std::size_t size() const { return count_; }
  std::string_view operator[](std::size_t i) const { return words_[i]; }

 private:
  std::array<char, 96> letters_{};
  std::array<std::string_view, 12> words_{};
  std::size_t count_ = 0;
};

/// Words that turn a step round: "do not mash", "never puree", "without straining".
bool denies(std::string_view word) {
  static constexpr std::array words{"not", "don't", "never", "no", "without", "avoid", "nor", "instead"};
  return std::find(words.begin(), words.end(), word) != words.end();
}

}  // namespace

void NamedProducts::add(std::uint16_t product) {
  if (count < products.size() && !has(product)) products[count++] = product;
}

bool NamedProducts::has(std::size_t product) const {
  return std::find(products.begin(), products.begin() + static_cast<std::ptrdiff_t>(count), product) !=
         products.begin() + static_cast<std::ptrdiff_t>(count);
}

void Forms::load(std::string_view file, const yaml::Document& document,
                 std::vector<foods::LoadError>& errors) {
  const checks::ErrorSink sink{file, errors};
  checks::Fields top(document.root(), "forms file", sink);
  const auto* list = top.find("forms");
  top.done();
  if (list == nullptr) return;
  for (const auto& node : list->items) {
    if (forms_.size() == most_forms) {
      sink.add(node.at, "more than 64 forms");
      return;
    }
    checks::Fields fields(node, "form", sink);
    load_form(fields);
    fields.done();
  }
}

void Forms::load_form(checks::Fields& fields) {
  const FormSet bit = FormSet{1} << forms_.size();
  Form form;
  form.id = fields.text("form", true);
  form.says = fields.text("says");
  if (form.says.empty()) form.says = form.id;
  form.within = fields.list("within");
  form.on_the_way_to = fields.list("on-the-way-to");
  form.foods = fields.list("foods");
  add(fields.list("words"), &Phrase::title, bit);
  add(fields.list("words"), &Phrase::line, bit);
  const auto titles = fields.list("title");
  add(titles, &Phrase::title, bit);
  if (!titles.empty()) dishes_ |= bit;
  add(fields.list("line"), &Phrase::line, bit);
  add(fields.list("steps"), &Phrase::steps, bit);
  add(fields.list("not"), &Phrase::title, 0);
  if (const auto decides = fields.choice("decides", {"always", "plain"})) {
    deciding_plain_ |= bit;
    if (*decides == 0) deciding_ |= bit;
  }
  if (fields.flag("only-said")) only_said_ |= bit;
  forms_.push_back(std::move(form));
}

void Forms::add(const std::vector<std::string>& texts, FormSet Phrase::*where, FormSet form) {
  for (const auto& text : texts) phrase(text).*where |= form;
}

Forms::Phrase& Forms::phrase(std::string_view text) {
  auto words = split(text);
  const auto [at, fresh] = by_words_.try_emplace(words, phrases_.size());
  if (fresh) phrases_.push_back({std::move(words), 0, 0, 0, {}});
  return phrases_[at->second];
}

void Forms::add_name(std::string_view words, std::uint16_t product) {
  phrase(words).products.push_back(product);
}

void Forms::finish() {
  for (auto& form : forms_) {
    for (const auto& other : form.within)
      if (const auto bit = find(other)) form.within_set |= *bit;
    for (const auto& other : form.on_the_way_to)
      if (const auto bit = find(other)) form.on_the_way_set |= *bit;
  }
  std::erase_if(phrases_, [](const Phrase& p) { return p.words.empty(); });
  // Longest first, so that the first that fits is the longest.
  std::stable_sort(phrases_.begin(), phrases_.end(), [](const Phrase& a, const Phrase& b) {
    if (a.words.front() != b.words.front()) return a.words.front() < b.words.front();
    return a.words.size() > b.words.size();
  });
  by_first_word_.clear();
  for (std::uint32_t i = 0; i < phrases_.size(); ++i) {
    auto& range = by_first_word_.try_emplace(phrases_[i].words.front(), Range{i, i}).first->second;
    range.last = i + 1;
  }
  // A name says the forms of its words too: "apple butter" is a butter, whoever it names.
  for (auto& phrase : phrases_) {
    if (phrase.products.empty()) continue;
    const auto& words = phrase.words;
    for (std::size_t i = 0; i < words.size(); ++i)
      each_phrase(
          i, i == 0 ? words.size() - 1 : words.size(),
          [&](std::size_t at) -> std::string_view { return words[at]; },
          [&](const Phrase& part, std::size_t) { phrase.title |= part.title; });
  }
}

std::optional<FormSet> Forms::find(std::string_view form) const {
  for (std::size_t i = 0; i < forms_.size(); ++i)
    if (forms_[i].id == form) return FormSet{1} << i;
  return std::nullopt;
}

std::string_view Forms::words_for(FormSet forms) const {
  for (std::size_t i = 0; i < forms_.size(); ++i)
    if ((forms >> i & 1U) != 0) return forms_[i].says;
  return {};
}

std::vector<Forms::FoodForm> Forms::food_forms() const {
  std::vector<FoodForm> out;
  for (std::size_t i = 0; i < forms_.size(); ++i)
    for (const auto& food : forms_[i].foods) out.push_back({food, FormSet{1} << i});
  return out;
}

FormSet Forms::covered_by(FormSet own) const {
  FormSet out = own;
  for (std::size_t i = 0; i < forms_.size(); ++i)
    if ((forms_[i].within_set & own) != 0) out |= FormSet{1} << i;
  return out;
}

FormSet Forms::in_the_end(FormSet said) const {
  FormSet out = said;
  for (std::size_t i = 0; i < forms_.size(); ++i)
    if ((forms_[i].on_the_way_set & said) != 0) out &= ~(FormSet{1} << i);
  return out;
}

/// Calls use(phrase, position) for the longest phrase at each place in [first, last), skipping what it took.
template <class WordAt, class Use>
void Forms::each_phrase(std::size_t first, std::size_t last, const WordAt& word_at, const Use& use) const {
  for (std::size_t i = first; i < last;) {
    const auto range = by_first_word_.find(word_at(i));
    std::size_t taken = 1;
    if (range != by_first_word_.end()) {
      for (std::uint32_t p = range->second.first; p < range->second.last; ++p) {
        const auto& words = phrases_[p].words;
        std::size_t k = 1;
        while (k < words.size() && i + k < last && word_at(i + k) == words[k]) ++k;
        if (k < words.size()) continue;
        use(phrases_[p], i);
        taken = k;
        break;
      }
    }
    i += taken;
  }
}

FormSet Forms::in_title(const Sentences& title, NamedProducts& named) const {
  FormSet out = 0;
  const auto word_at = [&](std::size_t i) { return title.words[i].text; };
  each_phrase(0, title.words.size(), word_at, [&](const Phrase& phrase, std::size_t) {
    out |= phrase.title;
    for (const auto product : phrase.products) named.add(product);
  });
  return out;
}

FormSet Forms::in_line(const foods::LineReading& line) const {
  FormSet out = 0;
  const auto use = [&](const Phrase& phrase, std::size_t) { out |= phrase.line; };
  const auto scan = [&](std::string_view text) {
    const ShortWords words(text);
    each_phrase(
        0, words.size(), [&](std::size_t i) { return words[i]; }, use);
  };
  for (const auto& state : line.states) scan(state);
  for (const auto& named : line.foods) scan(named.name);
  if (!line.amount.unit.empty()) scan(line.amount.unit);
  return out;
}

FormSet Forms::in_steps(const std::vector<StepText>& steps) const {
  FormSet out = 0;
  for (const auto& step : steps)
    for (const auto& sentence : step.sentences.all) {
      const auto word_at = [&](std::size_t i) { return step.sentences.words[i].text; };
      each_phrase(sentence.first, sentence.last, word_at, [&](const Phrase& phrase, std::size_t at) {
        if ((phrase.steps & ~out) == 0) return;
        for (std::size_t back = 1; back <= 3 && at >= sentence.first + back; ++back)
          if (denies(word_at(at - back))) return;
        out |= phrase.steps;
      });
    }
  return out;
}

FormSet Forms::in_text(std::string_view text) const {
  FormSet out = 0;
  const text::Words words(text);
  each_phrase(
      0, words.size(), [&](std::size_t i) { return words[i].text; },
      [&](const Phrase& phrase, std::size_t) { out |= phrase.title | phrase.line; });
  return out;
}

}  // namespace sealworthy::reading
