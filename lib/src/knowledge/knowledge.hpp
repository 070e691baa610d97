#pragma once

/// Everything under rules/, ready for use: foods, tested processes, methods, rules and their checks.

#include <memory>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "checks/check.hpp"
#include "checks/rule.hpp"
#include "foods/catalogue.hpp"
#include "plan/planning.hpp"
#include "prose/vocabulary.hpp"
#include "reading/card_words.hpp"
#include "reading/match.hpp"
#include "reading/methods.hpp"
#include "science/acid_data.hpp"
#include "science/heat_data.hpp"
#include "tested/tables.hpp"

namespace sealworthy::knowledge {

struct NamedDocument {
  std::string_view file;  ///< "rules/foods/fruits.yaml", or the path given to --rules
  yaml::Document document;
};

/// A piece of the science behind the findings, in plain words (rules/science/topics.yaml).
struct ScienceTopic {
  std::string id, title;
  std::vector<std::string> text;  ///< paragraphs
  std::string source;
};

class Knowledge {
 public:
  /// From documents, embedded ones first. What kind of rules a document holds is told by its top key (foods:,
  /// products:, rules:, methods:, forms:, card-words:, directions:, jars:, bands:, sources:, planning: ...),
  /// not by its path, so that a folder of house rules may be laid out as its owner likes. What is right is
  /// kept, so that all errors are told at once.
  static std::shared_ptr<const Knowledge> build(std::span<const NamedDocument> documents,
                                                std::vector<foods::LoadError>& errors);
  /// The embedded rules, built once. Cost: a few milliseconds the first time.
  static const Knowledge& builtin();

  foods::Catalogue catalogue;
  tested::Tables tables;
  reading::Methods methods;
  reading::MatchIndex match_index;
  reading::CardWords card_words;
  prose::Vocabulary directions;
  std::vector<checks::Rule> rules;  ///< sorted by id
  plan::Planning planning;
  science::AcidData acidity;
  science::HeatData heat;
  std::vector<ScienceTopic> topics;              ///< for `explain`, in the order of rules/science
  std::vector<checks::Vocabulary> vocabularies;  ///< lists of words that patterns share
  std::vector<yaml::Node> bases;  ///< base cards of the rules' examples: maps with a `base:` key
  std::vector<std::unique_ptr<checks::Check>> checks;  ///< in registry order
  std::vector<std::shared_ptr<const void>> arenas;     ///< of the documents that rules view into

  [[nodiscard]] const checks::Rule* rule(std::string_view id) const;
};

}  // namespace sealworthy::knowledge
