#pragma once

/// Which tested product a card follows: the one its `follows:` names, else the one found by its foods, their
/// forms, the title, the pack and the jars.
///
/// A match is one of
/// - without doubt: every food that the product asks for is there, nothing else is, and the form that decides
/// how
///   heat gets in (whole, mashed, juice, on the bone ...) is said or makes no difference to the card's
///   figures;
/// - doubtful: the nearest product, with what speaks against it in words. Never `tested`;
/// - none: nothing near.
/// A title may raise a doubt or settle which of two equals is meant; it never makes up for what the
/// ingredients contradict.

#include <memory>
#include <string_view>
#include <vector>

#include "foods/catalogue.hpp"
#include "reading/reading.hpp"
#include "tested/tables.hpp"

namespace sealworthy::reading {

/// What matching looks things up in: which products have a place for a food, and the words for forms
/// (rules/forms.yaml). Made once; after that any number of threads may use it.
class MatchIndex {
 public:
  MatchIndex();
  ~MatchIndex();
  MatchIndex(MatchIndex&&) noexcept;
  MatchIndex& operator=(MatchIndex&&) noexcept;

  /// Takes a document with a `forms:` list.
  void load(std::string_view file, const yaml::Document& document, std::vector<foods::LoadError>& errors);
  /// Once, after the catalogue and the tables are finished; both must outlive the index. A form that an
  /// identity names and no document describes is an error. Cost: about as many steps as there are (product,
  /// food) pairs: some thousands.
  void finish(const tested::Tables& tables, const foods::Catalogue& catalogue,
              std::vector<foods::LoadError>& errors);

  /// The form that words say and the product does not cover: "pureed" for "pumpkin puree" and cubed pumpkin.
  /// "" where there is none.
  [[nodiscard]] std::string_view not_covered(const tested::Product& product, std::string_view words) const;

  struct Impl;
  [[nodiscard]] const Impl& impl() const { return *impl_; }

 private:
  std::unique_ptr<Impl> impl_;
};

/// Needs of the reading: recipe, tables, match_index, ingredients, title, steps, jars (size, process, method,
/// gauge) and altitude. Cost: one pass over the products that share a food with the card, about 5
/// microseconds.
Match match(const Reading& so_far);

}  // namespace sealworthy::reading
