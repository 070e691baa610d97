#pragma once

/// The words for forms (rules/forms.yaml) and for products by name, found in a card's title, ingredient lines
/// and steps. Forms are what decides how heat gets into the jar or what the dish is: whole, mashed, juice,
/// jam ...

#include <array>
#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "checks/fields.hpp"
#include "foods/catalogue.hpp"
#include "reading/reading.hpp"

namespace sealworthy::reading {

/// A set of forms, one bit each, in the order of rules/forms.yaml. At most 64 forms.
using FormSet = std::uint64_t;

/// Products that a title names: index into Tables::products(). A title names few; more than fit are left out.
struct NamedProducts {
  std::array<std::uint16_t, 8> products{};
  std::size_t count = 0;

  void add(std::uint16_t product);
  [[nodiscard]] bool has(std::size_t product) const;
};

class Forms {
 public:
  /// A document with a `forms:` list; the top of rules/forms.yaml describes its keys.
  void load(std::string_view file, const yaml::Document& document, std::vector<foods::LoadError>& errors);
  /// Title words that name a product outright.
  void add_name(std::string_view words, std::uint16_t product);
  /// Builds the look-up by first word; no load or add_name after it.
  void finish();

  [[nodiscard]] std::optional<FormSet> find(std::string_view form) const;
  /// For messages: "mashed", "with the bones in". Of several the first; "" of none.
  [[nodiscard]] std::string_view words_for(FormSet forms) const;

  /// Forms that a title says, and the products it names.
  FormSet in_title(const Sentences& title, NamedProducts& named) const;
  /// Forms that an ingredient line says in its states, in the food's name ("pumpkin puree") or in what is
  /// counted
  /// ("4 cans").
  [[nodiscard]] FormSet in_line(const foods::LineReading& line) const;
  /// Forms that the steps tell, leaving out what a sentence denies ("do not mash").
  [[nodiscard]] FormSet in_steps(const std::vector<StepText>& steps) const;
  /// Forms that a text about a product says (its title, a style, a formula line), as a title or a line.
  [[nodiscard]] FormSet in_text(std::string_view text) const;
  /// Foods that bring a form with them ("smoked salmon" is smoked): ids, "tag:..." or "kind:...".
  struct FoodForm {
    std::string_view food;
    FormSet form;
  };
  [[nodiscard]] std::vector<FoodForm> food_forms() const;

  /// Forms that no product covers unless it has them itself.
  [[nodiscard]] FormSet deciding() const { return deciding_; }
  /// Forms that a product without formula does not cover unless it has them itself; holds deciding().
  [[nodiscard]] FormSet deciding_plain() const { return deciding_plain_; }
  /// Forms that no product is meant to have unless the card says so.
  [[nodiscard]] FormSet only_said() const { return only_said_; }
  /// Kinds of dish: forms that only a title says.
  [[nodiscard]] FormSet dishes() const { return dishes_; }
  /// `own` with the forms that go with one of them (`within:`).
  [[nodiscard]] FormSet covered_by(FormSet own) const;
  /// `said` less what is only on the way to another form said (`on-the-way-to:`): halved, then cut in cubes.
  [[nodiscard]] FormSet in_the_end(FormSet said) const;

 private:
  struct Form {
    std::string id;
    std::string says;
    std::vector<std::string> within;
    std::vector<std::string> foods;
    std::vector<std::string> on_the_way_to;
    FormSet within_set = 0;
    FormSet on_the_way_set = 0;
  };
  /// Words in a row and what they mean, by where they stand. All sets empty: they only look like a form.
  struct Phrase {
    std::vector<std::string> words;
    FormSet title = 0, line = 0, steps = 0;
    std::vector<std::uint16_t> products;
  };
  struct Range {
    std::uint32_t first = 0, last = 0;
  };

  void load_form(checks::Fields& fields);
  void add(const std::vector<std::string>& texts, FormSet Phrase::*where, FormSet form);
  Phrase& phrase(std::string_view text);
  template <class WordAt, class Use>
  void each_phrase(std::size_t first, std::size_t last, const WordAt& word_at, const Use& use) const;

  std::vector<Form> forms_;
  std::vector<Phrase> phrases_;
  std::map<std::vector<std::string>, std::size_t> by_words_;  ///< while loading
  std::unordered_map<std::string_view, Range> by_first_word_;
  FormSet deciding_ = 0;
  FormSet deciding_plain_ = 0;
  FormSet only_said_ = 0;
  FormSet dishes_ = 0;
};

}  // namespace sealworthy::reading
