#include "checks/check.hpp"

#include <algorithm>
#include <array>

#include "checks/food_set.hpp"

namespace sealworthy::checks {
namespace {

bool has_bit(unsigned set, unsigned bit) { return set == 0 || ((set >> bit) & 1U) != 0; }

bool holds(const std::vector<std::string>& list, std::string_view id) {
  return std::find(list.begin(), list.end(), id) != list.end();
}

/// The bit of OnlyIf::jar_class: its words stand in another order than reading::JarClass.
unsigned jar_class_bit(reading::JarClass jar_class) {
  static constexpr std::array<unsigned, 6> bits{5, 1, 2, 0, 3, 4};
  return bits[static_cast<std::size_t>(jar_class)];
}

/// The bit of OnlyIf::method.
unsigned method_bit(const reading::JarProcess& jar) {
  static constexpr std::array<unsigned, 6> bits{5, 0, 1, 2, 3, 4};
  constexpr unsigned none = 6;
  return jar.process == nullptr ? none : bits[static_cast<std::size_t>(jar.method)];
}

unsigned pack_bit(const recipe::Recipe& recipe) {
  if (!recipe.pack) return 2;
  return recipe.pack->value == recipe::Pack::hot ? 0 : 1;
}

bool keep_fits(OnlyIf::Keep wanted, reading::Keep keep) {
  if (wanted == OnlyIf::Keep::any) return true;
  return (wanted == OnlyIf::Keep::shelf) == (keep == reading::Keep::shelf);
}

bool product_fits(const OnlyIf& only_if, const tested::Product* product) {
  if (!only_if.product.empty() && (product == nullptr || !holds(only_if.product, product->id))) return false;
  return product == nullptr || !holds(only_if.not_product, product->id);
}

}  // namespace

const std::vector<std::string_view>& OnlyIf::jar_class_words() {
  static const std::vector<std::string_view> words{"low-acid",       "acid",      "acidified",
                                                   "sugar-preserve", "fermented", "unknown"};
  return words;
}

const std::vector<std::string_view>& OnlyIf::method_words() {
  static const std::vector<std::string_view> words{"boiling-water", "steam",   "pressure", "low-temperature",
                                                   "not-accepted",  "unknown", "none"};
  return words;
}

const std::vector<std::string_view>& OnlyIf::pack_words() {
  static const std::vector<std::string_view> words{"hot", "raw", "unsaid"};
  return words;
}

bool applies(const OnlyIf& only_if, const reading::Reading& reading) {
  if (!keep_fits(only_if.keep, reading.keep)) return false;
  if (!has_bit(only_if.jar_class, jar_class_bit(reading.jar_class))) return false;
  if (!has_bit(only_if.pack, pack_bit(*reading.recipe))) return false;
  if (only_if.method != 0 && std::none_of(reading.jars.begin(), reading.jars.end(), [&](const auto& jar) {
        return has_bit(only_if.method, method_bit(jar));
      }))
    return false;
  if (only_if.process && *only_if.process != reading.processed()) return false;
  if (only_if.matched && *only_if.matched != reading.match.sure()) return false;
  if (only_if.infant && *only_if.infant != reading.infant) return false;
  return product_fits(only_if, reading.match.product);
}

std::string fill(std::string_view text, const Figures& figures) {
  std::string out;
  out.reserve(text.size() + 32);
  while (!text.empty()) {
    const auto open = text.find('{');
    const auto close = open == text.npos ? text.npos : text.find('}', open);
    if (close == text.npos) break;
    const auto name = text.substr(open + 1, close - open - 1);
    const auto figure =
        std::find_if(figures.begin(), figures.end(), [&](const auto& f) { return f.first == name; });
    out.append(text.substr(0, open));
    if (figure == figures.end())
      out.append(text.substr(open, close - open + 1));
    else
      out.append(figure->second);
    text.remove_prefix(close + 1);
  }
  return out.append(text);
}

Maker::Maker(const foods::Catalogue& foods, const tested::Tables& processes,
             std::vector<foods::LoadError>& problems, std::span<const Vocabulary> words,
             const science::AcidData* acids)
    : catalogue(foods),
      tables(processes),
      errors(problems),
      vocabularies(words),
      acidity(acids),
      food_index(std::make_shared<FoodIndex>(foods)),
      product_foods(std::make_shared<ProductFoods>(processes, *food_index)) {}

Finding& Results::add(const Rule& rule, Position at, const Figures& figures) {
  Finding& finding = findings.emplace_back();
  finding.rule = rule.id;
  finding.severity = rule.severity;
  finding.topic = rule.topic;
  finding.at = at;
  finding.message = fill(rule.says, figures);
  finding.why = fill(rule.why, figures);
  finding.instead = fill(rule.instead, figures);
  finding.sources.push_back(rule.source + (rule.read == Read::memory ? " (from memory)" : ""));
  for (const auto& [name, value] : figures) {
    if (name == "found") finding.found = value;
    if (name == "needed") finding.needed = value;
  }
  return finding;
}

void Results::point(PointKind kind, Point::State state, std::string found, std::string needed) {
  points.push_back({kind, state, std::move(found), std::move(needed)});
}

void Results::assume(std::string what) { assumed.push_back(std::move(what)); }

}  // namespace sealworthy::checks
