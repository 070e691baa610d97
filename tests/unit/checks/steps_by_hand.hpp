#pragma once

/// A Reading with a title and steps put together by hand, and the check `practice-in-steps` over rules given
/// as YAML text, so that phrases can be tried without the rest of the checker.

#include <doctest/doctest.h>

#include <memory>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "checks/load_rules.hpp"
#include "checks/practice_in_steps.hpp"
#include "knowledge/sources.hpp"
#include "yaml/document.hpp"

namespace sealworthy::test {

/// What of a card the rules' `only-if:` looks at.
struct Card {
  reading::JarClass jar_class = reading::JarClass::low_acid;
  reading::MethodKind method = reading::MethodKind::pressure;
  bool processed = true;
  reading::Keep keep = reading::Keep::shelf;
  std::string title = "Ridge road jars";
  const tested::Product* product = nullptr;
  bool infant = false;
};

/// Rules of the check, from YAML texts.
class Steps {
 public:
  void add(std::string_view file, std::string_view text) {
    texts_.push_back(std::make_unique<std::string>(text));
    for (auto& read : yaml::read_documents(*texts_.back())) {
      if (auto* bad = std::get_if<yaml::BadDocument>(&read)) {
        errors_.push_back({std::string(file), bad->error});
        continue;
      }
      add(file, std::get<yaml::Document>(read));
    }
  }
  void add(std::string_view file, const yaml::Document& document) {
    documents_.push_back(document);
    if (const auto* lists = document.root().find("vocabulary"))
      vocabularies_.push_back({std::string(file), *lists});
    else if (document.root().find("sources") != nullptr)
      sources_.load(file, document, errors_);
    else if (document.root().find("rules") != nullptr)
      waiting_.push_back({std::string(file), document});
  }

  /// To be called once, after the last add.
  void make() {
    for (const auto& [file, document] : waiting_)
      checks::load_rules(file, document, sources_, rules_, errors_);
    std::vector<const checks::Rule*> ours;
    for (const auto& rule : rules_)
      if (rule.check == "practice-in-steps") ours.push_back(&rule);
    checks::Maker maker{catalogue_, tables_, errors_, vocabularies_};
    check_ = checks::make_practice_in_steps(ours, maker);
  }

  /// The findings on one step text.
  [[nodiscard]] std::vector<Finding> findings(std::string_view step, const Card& card = {}) const {
    recipe::Recipe recipe;
    recipe.title = {card.title, {1, 9}, card.title};
    recipe.processes.resize(card.processed ? 1 : 0);
    reading::Reading reading;
    reading.recipe = &recipe;
    reading.jar_class = card.jar_class;
    reading.keep = card.keep;
    reading.infant = card.infant;
    reading.match.product = card.product;
    if (card.product != nullptr) reading.match.by = reading::Match::By::follows;
    reading.title = reading::Sentences(card.title);
    reading.jars.resize(1);
    reading.jars[0].method = card.method;
    if (card.processed) reading.jars[0].process = recipe.processes.data();
    reading.steps.push_back({{7, 5}, step, reading::Sentences(step)});
    checks::Results results;
    check_->run(reading, results);
    return results.findings;
  }

  [[nodiscard]] std::vector<std::string> flagged(std::string_view step, const Card& card = {}) const {
    std::vector<std::string> ids;
    for (const auto& finding : findings(step, card)) ids.push_back(finding.rule);
    return ids;
  }

  [[nodiscard]] const std::vector<foods::LoadError>& errors() const { return errors_; }
  [[nodiscard]] const std::vector<checks::Rule>& rules() const { return rules_; }
  [[nodiscard]] const checks::Check& check() const { return *check_; }

 private:
  struct Waiting {
    std::string file;
    yaml::Document document;
  };
  std::vector<std::unique_ptr<std::string>> texts_;
  std::vector<yaml::Document> documents_;
  std::vector<Waiting> waiting_;
  std::vector<checks::Vocabulary> vocabularies_;
  knowledge::Sources sources_;
  std::vector<checks::Rule> rules_;
  std::vector<foods::LoadError> errors_;
  foods::Catalogue catalogue_;
  tested::Tables tables_;
  std::unique_ptr<checks::Check> check_;
};

}  // namespace sealworthy::test
