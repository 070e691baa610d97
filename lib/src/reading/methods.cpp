#include "reading/methods.hpp"

#include <algorithm>
#include <array>

#include "checks/fields.hpp"
#include "text/nearest.hpp"
#include "text/words.hpp"

namespace sealworthy::reading {
namespace {

/// Folded words with single spaces; hyphens and marks part words.
std::string plain(std::string_view text) {
  const text::Words words(text);
  std::string out;
  for (const auto& word : words) {
    if (!out.empty()) out += ' ';
    out += word.text;
  }
  return out;
}

/// True if `name` stands in `words` between word ends.
bool holds(std::string_view words, std::string_view name) {
  for (auto at = words.find(name); at != words.npos; at = words.find(name, at + 1)) {
    const auto end = at + name.size();
    if ((at == 0 || words[at - 1] == ' ') && (end == words.size() || words[end] == ' ')) return true;
  }
  return false;
}

struct Hit {
  const MethodWord* method = nullptr;
  std::string_view name;
};

/// True if each word that no name holds is a number or changes nothing.
bool nothing_else(const std::vector<Hit>& hits, std::string_view words,
                  const std::vector<std::string>& beside) {
  std::string left(words);
  for (const auto& hit : hits)
    for (auto at = words.find(hit.name); at != words.npos; at = words.find(hit.name, at + 1))
      std::fill_n(left.begin() + static_cast<std::ptrdiff_t>(at), hit.name.size(), ' ');
  const text::Words rest(left);
  return std::all_of(rest.begin(), rest.end(), [&](const auto& word) {
    return std::all_of(word.text.begin(), word.text.end(), [](char c) { return c >= '0' && c <= '9'; }) ||
           std::find(beside.begin(), beside.end(), word.text) != beside.end();
  });
}

/// The longest name inside the words; nothing where another, not part of a longer one, means another kind, or
/// where words stand beside them that may change what is done.
const MethodWord* longest_inside(const std::vector<MethodWord>& methods, std::string_view words,
                                 const std::vector<std::string>& beside) {
  std::vector<Hit> hits;
  for (const auto& method : methods)
    for (const auto& name : method.names)
      if (holds(words, name)) hits.push_back({&method, name});
  const auto longest = std::max_element(
      hits.begin(), hits.end(), [](const Hit& a, const Hit& b) { return a.name.size() < b.name.size(); });
  if (longest == hits.end()) return nullptr;
  for (const auto& hit : hits) {
    const bool part_of_longer = std::any_of(hits.begin(), hits.end(), [&](const Hit& other) {
      return other.name.size() > hit.name.size() && holds(other.name, hit.name);
    });
    if (!part_of_longer && hit.method->kind != longest->method->kind) return nullptr;
  }
  const bool accepted = longest->method->kind != MethodKind::not_accepted;
  return !accepted || nothing_else(hits, words, beside) ? longest->method : nullptr;
}

/// A name that differs by one letter; short names take no slip.
const MethodWord* slipped(const std::vector<MethodWord>& methods, std::string_view words) {
  constexpr std::size_t shortest = 5;
  const MethodWord* found = nullptr;
  for (const auto& method : methods)
    for (const auto& name : method.names)
      if (name.size() >= shortest && text::edit_distance(words, name, 1) <= 1) {
        if (found != nullptr && found->kind != method.kind) return nullptr;
        found = &method;
      }
  return found;
}

}  // namespace

void Methods::load(std::string_view file, const yaml::Document& document,
                   std::vector<foods::LoadError>& errors) {
  const checks::ErrorSink sink{file, errors};
  checks::Fields top(document.root(), "methods file", sink);
  const auto* list = top.find("methods");
  for (const auto& word : top.list("beside")) beside_.push_back(plain(word));
  top.done();
  if (list == nullptr) return;
  static const std::vector<std::string_view> kinds{"boiling-water", "steam", "pressure", "low-temperature",
                                                   "not-accepted"};
  static constexpr std::array kind_of{MethodKind::boiling_water, MethodKind::steam, MethodKind::pressure,
                                      MethodKind::low_temperature, MethodKind::not_accepted};
  for (const auto& node : list->items) {
    MethodWord method;
    checks::Fields fields(node, "method", sink);
    method.id = fields.text("id", true);
    method.name = fields.text("name", true);
    if (const auto kind = fields.choice("kind", kinds, true)) method.kind = kind_of[*kind];
    for (const auto& name : fields.list("names")) method.names.push_back(plain(name));
    if (const auto gauge = fields.choice("gauge", {"dial", "weighted"}))
      method.gauge = *gauge == 0 ? recipe::Gauge::dial : recipe::Gauge::weighted;
    fields.done();
    methods_.push_back(std::move(method));
  }
}

const MethodWord* Methods::find(std::string_view words) const {
  const auto folded = plain(words);
  for (const auto& method : methods_)
    if (std::find(method.names.begin(), method.names.end(), folded) != method.names.end()) return &method;
  if (const auto* method = longest_inside(methods_, folded, beside_)) return method;
  return slipped(methods_, folded);
}

}  // namespace sealworthy::reading
