#include "knowledge/sources.hpp"

#include "checks/fields.hpp"
#include "text/nearest.hpp"

namespace sealworthy::knowledge {

void Sources::load(std::string_view file, const yaml::Document& document,
                   std::vector<foods::LoadError>& errors) {
  const checks::ErrorSink sink{file, errors};
  const auto* sources = document.root().find("sources");
  if (sources == nullptr || !sources->is_map()) {
    sink.add(document.root().at, "'sources:' must be a map from keys to publications");
    return;
  }
  for (const auto& entry : sources->entries) {
    const auto* name = entry.value.find("name");
    if (name == nullptr || !name->is_scalar())
      sink.add(entry.key_at, "source " + std::string(entry.key) + ": 'name' is missing");
    else
      names_[std::string(entry.key)] = std::string(name->text);
  }
}

const std::string* Sources::name(std::string_view key) const {
  const auto found = names_.find(key);
  return found != names_.end() ? &found->second : nullptr;
}

std::string Sources::cite(const yaml::Node& source, std::string_view file,
                          std::vector<foods::LoadError>& errors) const {
  checks::Fields fields(source, "source", {file, errors});
  const auto key = fields.text("key");
  const auto title = fields.text("title", key.empty());
  const auto publisher = fields.text("publisher");
  const auto year = fields.text("year");
  const auto section = fields.text("section");
  const auto page = fields.text("page");
  fields.done();

  std::string cited = title;
  if (!key.empty()) {
    const auto found = names_.find(key);
    if (found == names_.end()) {
      std::vector<std::string_view> known;
      for (const auto& [k, name] : names_) known.emplace_back(k);
      const auto near = text::nearest(key, known);
      fields.sink().add(source.at, "no such source as '" + key + "' in sources.yaml",
                        near ? "did you mean '" + std::string(*near) + "'?" : "");
      return {};
    }
    cited = found->second;
  }
  if (!publisher.empty()) cited += ", " + publisher;
  if (!year.empty()) cited += " (" + year + ")";
  if (!section.empty()) cited += ", " + section;
  if (!page.empty()) cited += ", page " + page;
  return cited;
}

}  // namespace sealworthy::knowledge
