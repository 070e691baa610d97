#include "checks/load_rules.hpp"

#include <algorithm>
#include <array>

#include "checks/between_rules.hpp"
#include "checks/fields.hpp"
#include "text/nearest.hpp"

namespace sealworthy::checks {
namespace {

template <class T, std::size_t N>
std::vector<std::string_view> words_of() {
  std::vector<std::string_view> words;
  for (std::size_t i = 0; i < N; ++i) words.push_back(to_string(static_cast<T>(i)));
  return words;
}

OnlyIf read_only_if(const yaml::Node& node, const std::string& what, ErrorSink sink) {
  OnlyIf only_if;
  Fields fields(node, what + ", only-if", sink);
  only_if.jar_class = fields.choices("jar-class", OnlyIf::jar_class_words());
  only_if.method = fields.choices("method", OnlyIf::method_words());
  only_if.pack = fields.choices("pack", OnlyIf::pack_words());
  only_if.product = fields.list("product");
  only_if.not_product = fields.list("not-product");
  if (const auto process = fields.choice("process", {"present", "missing"})) only_if.process = *process == 0;
  if (const auto matched = fields.choice("matched", {"yes", "no"})) only_if.matched = *matched == 0;
  if (const auto infant = fields.choice("infant", {"yes", "no"})) only_if.infant = *infant == 0;
  if (const auto keep = fields.choice("keep", {"shelf", "cold", "any"}))
    only_if.keep = static_cast<OnlyIf::Keep>(*keep);
  fields.done();
  return only_if;
}

std::optional<Example> read_example(const yaml::Node& node, const std::string& base, const std::string& what,
                                    ErrorSink sink) {
  if (!node.is_map() || node.entries.size() != 1 ||
      (node.entries[0].key != "flags" && node.entries[0].key != "silent")) {
    sink.add(node.at, what + ": an example is 'flags:' or 'silent:' with a sentence or a changed card");
    return std::nullopt;
  }
  const auto& change = node.entries[0].value;
  Example example{node.entries[0].key == "flags", base, change};
  if (const auto* on = change.find("on")) example.base = std::string(on->text);
  if (!change.is_scalar() && !change.is_map()) {
    sink.add(change.at, what + ": an example holds a sentence or a map of changed keys");
    return std::nullopt;
  }
  return example;
}

void read_examples(Fields& fields, Rule& rule, const std::string& what) {
  const auto on = fields.text("on");
  const std::string base = on.empty() ? "green-beans" : on;
  const auto* examples = fields.find("examples");
  if (examples == nullptr || !examples->is_sequence()) {
    fields.sink().add(fields.at(), what + ": 'examples' are missing");
    return;
  }
  for (const auto& item : examples->items)
    if (auto example = read_example(item, base, what, fields.sink()))
      rule.examples.push_back(std::move(*example));
}

Rule read_rule(const yaml::Node& node, const ErrorSink& sink, const knowledge::Sources& sources) {
  static const auto severities = words_of<Severity, 4>();
  static const auto topics = words_of<Topic, 14>();
  static const auto reads = words_of<Read, 3>();
  Rule rule;
  rule.at = node.at;
  rule.file = std::string(sink.file);
  const auto* id = node.find("id");
  const std::string what =
      id != nullptr && id->is_scalar() ? "rule " + std::string(id->text) : "rule without an id";
  Fields fields(node, what, sink);
  rule.id = fields.text("id", true);
  if (const auto s = fields.choice("severity", severities, true)) rule.severity = static_cast<Severity>(*s);
  if (const auto t = fields.choice("topic", topics, true)) rule.topic = static_cast<Topic>(*t);
  rule.check = fields.text("check", true);
  if (const auto* with = fields.find("with")) rule.with = *with;
  if (const auto* only_if = fields.find("only-if")) rule.only_if = read_only_if(*only_if, what, sink);
  rule.says = fields.text("says", true);
  rule.why = fields.text("why", true);
  rule.instead = fields.text("instead", true);
  rule.instead_if_never_canned = fields.text("instead-if-never-canned");
  if (const auto never = fields.choice("never-canned", {"yes", "no"})) rule.never_canned = *never == 0;
  rule.silent_beside = fields.list("silent-beside");
  if (const auto* source = fields.find("source"))
    rule.source = sources.cite(*source, sink.file, sink.errors);
  else
    sink.add(node.at, what + ": 'source' is missing");
  if (const auto r = fields.choice("read", reads, true)) rule.read = static_cast<Read>(*r);
  read_examples(fields, rule, what);
  fields.done();
  return rule;
}

/// The list under a top key of a document whose other keys are not known.
std::span<const yaml::Node> list_under(std::string_view key, const yaml::Document& document,
                                       const ErrorSink& sink) {
  Fields top(document.root(), "rules file", sink);
  const auto* list = top.find(key);
  top.find("about");
  top.done();
  if (list == nullptr) return {};
  if (!list->is_sequence()) sink.add(list->at, "'" + std::string(key) + ":' must be a list");
  return list->items;
}

std::string place(const Rule& rule) { return rule.file + ":" + std::to_string(rule.at.line); }

std::string did_you_mean(std::string_view word, const std::vector<std::string_view>& known) {
  const auto near = text::nearest(word, known);
  return near ? "did you mean '" + std::string(*near) + "'?" : std::string();
}

}  // namespace

void load_rules(std::string_view file, const yaml::Document& document, const knowledge::Sources& sources,
                std::vector<Rule>& rules, std::vector<foods::LoadError>& errors) {
  const ErrorSink sink{file, errors};
  for (const auto& node : list_under("rules", document, sink)) {
    const auto before = errors.size();
    Rule rule = read_rule(node, sink, sources);
    if (errors.size() == before) rules.push_back(std::move(rule));
  }
}

void load_bases(std::string_view file, const yaml::Document& document, std::vector<yaml::Node>& bases,
                std::vector<foods::LoadError>& errors) {
  const ErrorSink sink{file, errors};
  for (const auto& node : list_under("bases", document, sink)) {
    const auto* name = node.find("base");
    if (name == nullptr || !name->is_scalar())
      sink.add(node.at, "a base card needs its name under 'base:'");
    else
      bases.push_back(node);
  }
}

void finish_rules(std::vector<Rule>& rules, const std::vector<yaml::Node>& bases,
                  const std::vector<std::string_view>& checks, std::vector<foods::LoadError>& errors) {
  std::stable_sort(rules.begin(), rules.end(), [](const Rule& a, const Rule& b) { return a.id < b.id; });
  std::vector<std::string_view> names;
  names.reserve(bases.size());
  for (const auto& base : bases) names.push_back(base.find("base")->text);
  const Rule* before = nullptr;
  for (const auto& rule : rules) {
    const ErrorSink sink{rule.file, errors};
    if (before != nullptr && before->id == rule.id)
      sink.add(rule.at, "rule " + rule.id + " is given twice", "the other stands at " + place(*before));
    if (std::find(checks.begin(), checks.end(), rule.check) == checks.end())
      sink.add(rule.at, "rule " + rule.id + ": no such check as '" + rule.check + "'",
               did_you_mean(rule.check, checks));
    for (const auto& other : rule.silent_beside) {
      const auto is_meant = [&](const Rule& one) {
        return other == every_never_canned ? one.never_canned : one.id == other;
      };
      if (other != every_never_canned && std::none_of(rules.begin(), rules.end(), is_meant))
        sink.add(rule.at, "rule " + rule.id + ": silent-beside names no rule: '" + other + "'");
      // Else a recipe could come out less grave, or two rules could silence each other.
      for (const Rule& one : rules)
        if (is_meant(one) &&
            (one.severity < rule.severity || std::find(one.silent_beside.begin(), one.silent_beside.end(),
                                                       rule.id) != one.silent_beside.end()))
          sink.add(rule.at, "rule " + rule.id + ": silent beside '" + one.id +
                                "', which is less grave or silent beside it");
    }
    for (const auto& example : rule.examples)
      if (std::find(names.begin(), names.end(), example.base) == names.end())
        sink.add(example.change.at, "rule " + rule.id + ": no base card '" + example.base + "'",
                 did_you_mean(example.base, names));
    before = &rule;
  }
}

}  // namespace sealworthy::checks
