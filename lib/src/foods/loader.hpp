#pragma once

/// Reads the documents of rules/foods and builds the index of names.

#include <memory>
#include <string_view>
#include <vector>

#include "foods/catalogue.hpp"
#include "foods/index.hpp"

namespace sealworthy::foods {

class Loader {
 public:
  void load(std::string_view file, const yaml::Document& document, Index& index,
            std::vector<LoadError>& errors);
  /// Once, after the last document: resolves what foods say of each other and builds the index of names.
  void finish(Index& index, std::vector<LoadError>& errors);

 private:
  /// A food's entry, kept until all foods are known.
  struct Entry {
    const yaml::Node* node = nullptr;
    std::string_view file;
  };
  void load_food(const yaml::Node& node, std::string_view file, Index& index, std::vector<LoadError>& errors);
  void add_names(FoodId food, Index& index, std::vector<LoadError>& errors);
  void add_name(FoodId food, std::string_view name, Position at, Index& index,
                std::vector<LoadError>& errors);
  void resolve(FoodId food, Index& index, std::vector<LoadError>& errors);
  void read_cautions(const yaml::Node& node, std::string_view file, Food& food,
                     std::vector<LoadError>& errors) const;
  void read_instead(const yaml::Node& list, FoodId food, Index& index, std::vector<LoadError>& errors) const;
  [[nodiscard]] FoodId find(std::string_view id) const;
  /// What the `source:` of a row stands for; an error and "" if it is not known.
  std::string_view source(const yaml::Node& map, std::string_view file, std::vector<LoadError>& errors) const;

  struct Named {
    std::string_view key;
    const yaml::Node* node;
    std::string_view file;
  };
  static const Named* named(const std::vector<Named>& sorted, std::string_view key);

  std::vector<Entry> entries_;                            ///< by food
  std::vector<std::pair<std::string_view, FoodId>> ids_;  ///< sorted in finish
  std::vector<Named> sources_;
  std::vector<Named> cautions_;
  std::vector<std::unique_ptr<std::string>> files_;
  std::vector<std::shared_ptr<const void>> arenas_;
};

}  // namespace sealworthy::foods
