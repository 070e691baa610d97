#pragma once

/// A product of the tables, written as a card that follows it in every point but those that an edit changes;
/// kept apart from the writer that `suggest` uses, which is under test itself.

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "foods/catalogue.hpp"
#include "suggest/card_writer.hpp"
#include "tested/product.hpp"
#include "tested/tables.hpp"

namespace sealworthy::mutation {

using suggest::CardFigures;

/// A change of one line of the formula.
struct LineEdit {
  double factor = 1;                    ///< of its amount; 0: the line is left out
  std::string instead = {};             ///< the whole line in other words; empty: as the formula has it
  std::string state = {};               ///< a state said beside those of the formula
  std::string food = {};                ///< the catalogue id of another food in its place, same amount
  std::optional<double> strength = {};  ///< of a vinegar, instead of the formula's
};

/// How amounts and lines are written.
enum class LineForm { spelled_out, prose, metric };

struct CardStyle {
  bool follows = true;                  ///< with `follows:`
  bool acid = true;                     ///< with the acid that the product asks for
  std::string method = {};              ///< trade words; empty: those of the figures
  std::size_t acid_choice = 0;          ///< which of the acids per jar
  double batch = 1;                     ///< published batches
  std::vector<LineEdit> edits = {};     ///< by line of the formula; shorter: the rest as published
  std::vector<std::string> added = {};  ///< further ingredient lines
  std::vector<std::string> work = {};   ///< by required piece of work; empty or shorter: as published
  LineForm form = LineForm::spelled_out;
  bool reversed = false;  ///< ingredients from last to first
  std::size_t synonym =
      0;  ///< foods by this other name of theirs, the first is 1; 0: by the catalogue's own name
};

/// What cooks call each food, by its id: the `names:` of rules/foods.
std::map<std::string, std::vector<std::string>> names_of_foods();

class CardWriter {
 public:
  CardWriter(const tested::Tables& tables, const foods::Catalogue& catalogue)
      : tables_(tables), catalogue_(catalogue), names_(names_of_foods()) {}

  [[nodiscard]] std::string write(const tested::Product& product, const CardFigures& figures,
                                  const CardStyle& style) const;

 private:
  [[nodiscard]] std::vector<std::string> ingredients(const tested::Product& product,
                                                     const CardFigures& figures,
                                                     const CardStyle& style) const;
  [[nodiscard]] std::string formula_line(const tested::FormulaLine& line, const LineEdit& edit,
                                         const CardStyle& style) const;
  [[nodiscard]] std::string made_from(const std::string& food, const std::string& form) const;
  [[nodiscard]] std::string food_name(const std::string& id, std::size_t synonym = 0) const;
  void add_plain_foods(const tested::Product& product, const CardFigures& figures,
                       std::vector<std::string>& lines) const;
  [[nodiscard]] std::string jar_name(tested::JarIndex jar) const;

  const tested::Tables& tables_;
  const foods::Catalogue& catalogue_;
  std::map<std::string, std::vector<std::string>> names_;
};

}  // namespace sealworthy::mutation
