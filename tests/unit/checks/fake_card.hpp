#pragma once

/// A card made by hand for the table checks: no YAML, no foods, no matching. The product is invented; the
/// rules are the real ones.

#include <memory>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "checks/check.hpp"
#include "knowledge/knowledge.hpp"
#include "reading/jars.hpp"
#include "reading/reading.hpp"

namespace sealworthy::checks::fake {

struct Step {
  double to_ft = 0;  ///< 0: open
  double minutes = 0;
  double psi = 0;  ///< 0: none
  bool not_recommended = false;
};

/// Jar sizes of rules/jars.yaml by id.
tested::JarIndex size_of(std::string_view id);

class Card {
 public:
  /// A product of the class with no rows, by hot pack, in pints, at no known altitude.
  explicit Card(tested::ProductClass product_class = tested::ProductClass::low_acid);

  Card& row(tested::TableMethod method, const char* packs, const char* jar,
            std::vector<std::vector<Step>> options);
  Card& pack(std::optional<recipe::Pack> pack);
  Card& jar(const char* text);
  Card& no_jar();
  Card& method(reading::MethodKind kind, std::optional<recipe::Gauge> gauge = {});
  Card& minutes(double low, double high = 0);
  Card& psi(double low, double high = 0);
  Card& headspace(double inches);
  Card& feet(double height);

  tested::Product product;
  recipe::Recipe recipe;

  /// The reading of the card as it stands now.
  reading::Reading& read();
  /// Runs one check by its name in the registry.
  Results run(std::string_view check);

 private:
  /// Made anew for each run: it points into the card, so a copied card must not have its original's.
  struct Made {
    Made() = default;
    Made(const Made& /*other*/) {}
    Made& operator=(const Made& /*other*/) { return *this; }
    Made(Made&&) = default;
    Made& operator=(Made&&) = default;
    ~Made() = default;
    reading::Reading reading;
  } made_;

  recipe::Process process_;
  std::optional<recipe::Placed<quantity::JarText>> jar_;
  reading::MethodKind kind_ = reading::MethodKind::boiling_water;
  std::optional<recipe::Gauge> gauge_;
  std::vector<Altitude> heights_;
};

/// Ids of the findings, in order, joined by spaces.
std::string ids(const Results& results);
/// The worst state recorded for a point; unknown where none was.
Point::State state(const Results& results, PointKind kind);
bool recorded(const Results& results, PointKind kind);

}  // namespace sealworthy::checks::fake
