#pragma once

/// A product of the tables, written as a card that follows it in every point.

#include <optional>
#include <string>
#include <vector>

#include "foods/catalogue.hpp"
#include "tested/product.hpp"
#include "tested/tables.hpp"

namespace sealworthy::suggest {

/// One point of a product's table.
struct CardFigures {
  tested::TableMethod method = tested::TableMethod::boiling_water;
  recipe::Pack pack = recipe::Pack::hot;
  tested::JarIndex jar = 0;
  double minutes = 0;
  std::optional<double> psi;
  double feet = 0;
  std::string part;  ///< Row::applies_to
};

struct CardStyle {
  bool follows = true;          ///< with `follows:`
  bool acid = true;             ///< with the acid that the product asks for
  std::string method = {};      ///< trade words; empty: those of the figures
  std::size_t acid_choice = 0;  ///< which of the acids per jar
  double scale = 1;             ///< times the formula's amounts
  std::vector<tested::JarIndex> jars =
      {};  ///< sizes that the acid in each jar is told for; empty: the figures'
};

/// A line of the card as it stands in YAML, and the foods that it is for.
struct CardLine {
  std::string yaml;
  std::vector<std::string> foods;
  const tested::FormulaLine* formula = nullptr;  ///< of a formula's line
  bool per_jar = false;
};

class CardWriter {
 public:
  CardWriter(const tested::Tables& tables, const foods::Catalogue& catalogue)
      : tables_(tables), catalogue_(catalogue) {}

  [[nodiscard]] std::string write(const tested::Product& product, const CardFigures& figures,
                                  const CardStyle& style) const;

  // Parts of it, as YAML.
  [[nodiscard]] std::vector<CardLine> ingredients(const tested::Product& product, const CardFigures& figures,
                                                  const CardStyle& style) const;
  /// "1/2 inch"; empty where the product tells none.
  [[nodiscard]] std::string headspace(const tested::Product& product, const CardFigures& figures) const;
  [[nodiscard]] std::vector<std::string> steps(const tested::Product& product,
                                               const CardFigures& figures) const;
  [[nodiscard]] std::string jar_name(tested::JarIndex jar) const;

 private:
  [[nodiscard]] std::string formula_line(const tested::FormulaLine& line, double scale) const;
  [[nodiscard]] std::string made_from(const std::string& food, const std::string& form) const;
  [[nodiscard]] std::string food_name(const std::string& id) const;
  [[nodiscard]] CardLine acid_line(const tested::Product& product, tested::JarIndex jar, std::size_t choice,
                                   const std::string& each) const;
  void add_plain_foods(const tested::Product& product, const CardFigures& figures,
                       std::vector<CardLine>& lines) const;

  const tested::Tables& tables_;
  const foods::Catalogue& catalogue_;
};

}  // namespace sealworthy::suggest
