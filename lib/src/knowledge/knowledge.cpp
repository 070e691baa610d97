#include "knowledge/knowledge.hpp"

#include <algorithm>
#include <array>

#include "checks/fields.hpp"
#include "checks/load_rules.hpp"
#include "knowledge/embedded.hpp"
#include "knowledge/sources.hpp"
#include "text/nearest.hpp"

namespace sealworthy::knowledge {
namespace {

/// What a document of rules holds, in the order in which kinds are read: later ones refer to earlier ones.
enum class Kind {
  foods,
  sources,
  sizes,
  changes,
  products,
  methods,
  forms,
  card_words,
  directions,
  acids,
  acidity,
  heat,
  topics,
  vocabulary,
  bases,
  rules,
  planning
};

struct TopKey {
  std::string_view key;
  Kind kind;
};
constexpr std::array top_keys{
    TopKey{"foods", Kind::foods},
    TopKey{"states", Kind::foods},
    TopKey{"line-words", Kind::foods},
    TopKey{"food-sources", Kind::foods},
    TopKey{"food-cautions", Kind::foods},
    TopKey{"sources", Kind::sources},
    TopKey{"jars", Kind::sizes},
    TopKey{"bands", Kind::sizes},
    TopKey{"altitude", Kind::sizes},
    TopKey{"products", Kind::products},
    TopKey{"changes", Kind::changes},
    TopKey{"methods", Kind::methods},
    TopKey{"forms", Kind::forms},
    TopKey{"bases", Kind::bases},
    TopKey{"rules", Kind::rules},
    TopKey{"card-words", Kind::card_words},
    TopKey{"directions", Kind::directions},
    TopKey{"vocabulary", Kind::vocabulary},
    TopKey{"planning", Kind::planning},
    TopKey{"weak-acids", Kind::acids},
    TopKey{"acidity", Kind::acidity},
    TopKey{"heat", Kind::heat},
    TopKey{"topics", Kind::topics},
};

std::optional<Kind> kind_of(const NamedDocument& named, std::vector<foods::LoadError>& errors) {
  const auto& root = named.document.root();
  for (const auto& top : top_keys)
    if (root.find(top.key) != nullptr) return top.kind;
  std::vector<std::string_view> known;
  known.reserve(top_keys.size());
  for (const auto& top : top_keys) known.push_back(top.key);
  std::string suggestion = "a rules file has one of these keys at its top: ";
  for (const auto key : known) suggestion.append(key == known.front() ? "" : ", ").append(key);
  for (const auto& entry : root.entries)
    if (const auto near = text::nearest(entry.key, known))
      suggestion = "did you mean '" + std::string(*near) + ":'?";
  errors.push_back({std::string(named.file), {root.at, "not a rules file", suggestion}});
  return std::nullopt;
}

struct Sorted {
  const NamedDocument* named;
  Kind kind;
};

/// The documents by kind, otherwise in the order given.
std::vector<Sorted> sort_by_kind(std::span<const NamedDocument> documents,
                                 std::vector<foods::LoadError>& errors) {
  std::vector<Sorted> sorted;
  for (const auto& named : documents)
    if (const auto kind = kind_of(named, errors)) sorted.push_back({&named, *kind});
  std::stable_sort(sorted.begin(), sorted.end(),
                   [](const Sorted& a, const Sorted& b) { return a.kind < b.kind; });
  return sorted;
}

void make_checks(Knowledge& knowledge, std::vector<foods::LoadError>& errors) {
  checks::Maker maker{knowledge.catalogue, knowledge.tables, errors, knowledge.vocabularies,
                      &knowledge.acidity};
  for (const auto& registered : checks::registry()) {
    std::vector<const checks::Rule*> rules;
    for (const auto& rule : knowledge.rules)
      if (rule.check == registered.name) rules.push_back(&rule);
    knowledge.checks.push_back(registered.make(rules, maker));
  }
}

/// Errors are told as in every rules file.
void load_topics(std::string_view file, const yaml::Document& document, std::vector<ScienceTopic>& topics,
                 std::vector<foods::LoadError>& errors) {
  const checks::ErrorSink sink{file, errors};
  for (const auto& node : document.root().find("topics")->items) {
    checks::Fields fields(node, "topic", sink);
    topics.push_back({fields.text("id", true), fields.text("title", true), fields.list("text"),
                      fields.text("source", true)});
    fields.done();
  }
}

std::vector<std::string_view> check_names() {
  std::vector<std::string_view> names;
  for (const auto& registered : checks::registry()) names.push_back(registered.name);
  return names;
}

}  // namespace

std::shared_ptr<const Knowledge> Knowledge::build(std::span<const NamedDocument> documents,
                                                  std::vector<foods::LoadError>& errors) {
  auto knowledge = std::make_shared<Knowledge>();
  Sources sources;
  const auto sorted = sort_by_kind(documents, errors);
  const auto load = [&](Kind kind, auto&& take) {
    for (const auto& [named, its_kind] : sorted)
      if (its_kind == kind) take(named->file, named->document);
  };
  const auto into_tables = [&](std::string_view file, const yaml::Document& document) {
    knowledge->tables.load(file, document, knowledge->catalogue, errors);
  };

  load(Kind::foods,
       [&](auto file, const auto& document) { knowledge->catalogue.load(file, document, errors); });
  knowledge->catalogue.finish(errors);
  load(Kind::sources, [&](auto file, const auto& document) { sources.load(file, document, errors); });
  load(Kind::sources, into_tables);
  load(Kind::sizes, into_tables);
  load(Kind::changes, into_tables);
  load(Kind::products, into_tables);
  knowledge->tables.finish(knowledge->catalogue, errors);
  load(Kind::methods,
       [&](auto file, const auto& document) { knowledge->methods.load(file, document, errors); });
  load(Kind::forms,
       [&](auto file, const auto& document) { knowledge->match_index.load(file, document, errors); });
  knowledge->match_index.finish(knowledge->tables, knowledge->catalogue, errors);
  load(Kind::card_words,
       [&](auto file, const auto& document) { knowledge->card_words.load(file, document, errors); });
  load(Kind::acids, [&](auto file, const auto& document) {
    knowledge->acidity.load_acids(file, document, knowledge->catalogue, errors);
  });
  load(Kind::acidity, [&](auto file, const auto& document) {
    knowledge->acidity.load_foods(file, document, knowledge->catalogue, errors);
  });
  load(Kind::heat, [&](auto file, const auto& document) { knowledge->heat.load(file, document, errors); });
  load(Kind::topics,
       [&](auto file, const auto& document) { load_topics(file, document, knowledge->topics, errors); });
  load(Kind::directions,
       [&](auto file, const auto& document) { knowledge->directions.load(file, document, errors); });
  knowledge->directions.finish(knowledge->methods);
  load(Kind::vocabulary, [&](auto file, const auto& document) {
    knowledge->vocabularies.push_back({std::string(file), *document.root().find("vocabulary")});
    knowledge->arenas.push_back(document.arena());
  });
  load(Kind::bases, [&](auto file, const auto& document) {
    checks::load_bases(file, document, knowledge->bases, errors);
    knowledge->arenas.push_back(document.arena());
  });
  load(Kind::rules, [&](auto file, const auto& document) {
    checks::load_rules(file, document, sources, knowledge->rules, errors);
    knowledge->arenas.push_back(document.arena());
  });
  load(Kind::planning,
       [&](auto file, const auto& document) { knowledge->planning.load(file, document, sources, errors); });
  checks::finish_rules(knowledge->rules, knowledge->bases, check_names(), errors);
  make_checks(*knowledge, errors);
  return knowledge;
}

const Knowledge& Knowledge::builtin() {
  // Never taken down: at the end of a short run that would cost as much as a tenth of it.
  static const auto& built = *new std::shared_ptr<const Knowledge>([] {
    std::vector<NamedDocument> documents;
    // The pack was made and checked when the library was built (lib/tools): it is sound and has no errors.
    if (const auto packed = yaml::unpack(embedded_rules()))
      for (const auto& [file, document] : *packed) documents.push_back({file, document});
    std::vector<foods::LoadError> errors;
    return build(documents, errors);
  }());
  return *built;
}

const checks::Rule* Knowledge::rule(std::string_view id) const {
  const auto found =
      std::lower_bound(rules.begin(), rules.end(), id,
                       [](const checks::Rule& rule, std::string_view wanted) { return rule.id < wanted; });
  return found != rules.end() && found->id == id ? &*found : nullptr;
}

}  // namespace sealworthy::knowledge
