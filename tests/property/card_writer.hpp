#pragma once

/// A product of the tables, written as a card that follows it in every point.

#include <string>
#include <vector>

#include "figures.hpp"
#include "foods/catalogue.hpp"
#include "tested/product.hpp"
#include "tested/tables.hpp"

namespace sealworthy::property {

struct CardStyle {
  bool follows = true;          ///< with `follows:`
  bool acid = true;             ///< with the acid that the product asks for
  std::string method = {};      ///< trade words; empty: those of the figures
  std::size_t acid_choice = 0;  ///< which of the acids per jar
};

class CardWriter {
 public:
  CardWriter(const tested::Tables& tables, const foods::Catalogue& catalogue)
      : tables_(tables), catalogue_(catalogue) {}

  [[nodiscard]] std::string write(const tested::Product& product, const CardFigures& figures,
                                  const CardStyle& style) const;

 private:
  [[nodiscard]] std::vector<std::string> ingredients(const tested::Product& product,
                                                     const CardFigures& figures,
                                                     const CardStyle& style) const;
  [[nodiscard]] std::string formula_line(const tested::FormulaLine& line) const;
  [[nodiscard]] std::string made_from(const std::string& food, const std::string& form) const;
  [[nodiscard]] std::string food_name(const std::string& id) const;
  void add_plain_foods(const tested::Product& product, const CardFigures& figures,
                       std::vector<std::string>& lines) const;
  [[nodiscard]] std::string jar_name(tested::JarIndex jar) const;

  const tested::Tables& tables_;
  const foods::Catalogue& catalogue_;
};

}  // namespace sealworthy::property
