#include "prose/publisher.hpp"

#include <fmt/format.h>

#include <array>
#include <cmath>
#include <nlohmann/json.hpp>
#include <random>

#include "quantity/amount.hpp"
#include "quantity/figures.hpp"

namespace sealworthy::prose_test {
namespace {

using Json = nlohmann::ordered_json;

/// mt19937 gives the same numbers everywhere; the standard's distributions do not.
class Dice {
 public:
  explicit Dice(std::uint32_t seed) : engine_(seed) {}
  std::size_t below(std::size_t n) { return engine_() % n; }
  template <std::size_t N>
  std::string_view one_of(const std::array<std::string_view, N>& words) {
    return words[below(N)];
  }

 private:
  std::mt19937 engine_;
};

std::string in_quotes(std::string_view text) { return Json(std::string(text)).dump(); }

std::string plural(const std::string& jar) {
  const bool word = jar.ends_with("pint") || jar.ends_with("quart");
  return word ? jar + "s" : jar + " jars";
}

struct Parts {
  std::vector<std::string> jars;
  std::string pack, headspace, method, gauge, pressure, altitude;
  double minutes = 0;
};

std::string text_of(const yaml::Node* node) {
  return node == nullptr || !node->is_scalar() ? std::string() : std::string(node->text);
}

bool read_parts(const yaml::Node& base, Parts& parts) {
  const auto* jars = base.find("jars");
  const auto* process = base.find("process");
  if (jars == nullptr || process == nullptr || !process->is_map()) return false;
  if (jars->is_scalar()) parts.jars.emplace_back(jars->text);
  for (const auto& jar : jars->items) {
    if (!jar.is_scalar()) return false;
    parts.jars.emplace_back(jar.text);
  }
  for (const auto& jar : parts.jars)
    if (jar.find("mouth") != std::string::npos) return false;
  parts.pack = text_of(base.find("pack"));
  parts.headspace = text_of(base.find("headspace"));
  parts.method = text_of(process->find("method"));
  parts.gauge = text_of(process->find("gauge"));
  parts.pressure = text_of(process->find("pressure"));
  parts.altitude = text_of(process->find("altitude"));
  const auto time = quantity::read_time(text_of(process->find("time")));
  if (!std::holds_alternative<Interval<Duration>>(time)) return false;
  parts.minutes = in_minutes(std::get<Interval<Duration>>(time).low);
  return !parts.jars.empty() && !parts.headspace.empty();
}

std::string fill_words(const Parts& parts, Dice& dice) {
  static constexpr std::array<std::string_view, 3> hot{
      "Ladle hot into hot {0} jars, leaving {1} headspace.",
      "Fill clean {0} jars with the hot food, leaving {1} of headspace.",
      "Hot pack: fill {0} jars to within {1} of the rim."};
  static constexpr std::array<std::string_view, 3> raw{
      "Pack raw into hot {0} jars, leaving {1} headspace.",
      "Fill {0} jars by the raw pack method, with a headspace of {1}.",
      "Raw pack {0} jars and leave {1} of head space."};
  static constexpr std::array<std::string_view, 2> open{"Fill {0} jars, leaving {1} headspace.",
                                                        "Pack {0} jars to {1} from the top."};
  const auto words = parts.pack == "hot"   ? dice.one_of(hot)
                     : parts.pack == "raw" ? dice.one_of(raw)
                                           : dice.one_of(open);
  std::string jars;
  for (const auto& jar : parts.jars) jars += (jars.empty() ? "" : " or ") + jar;
  return fmt::format(fmt::runtime(words), jars, parts.headspace);
}

std::string minutes_words(double minutes, Dice& dice) {
  const int whole = static_cast<int>(minutes);
  if (whole % 60 == 0 && dice.below(2) == 0)
    return whole == 60 ? "1 hour" : fmt::format("{} hours", whole / 60);
  if (whole > 60 && dice.below(3) == 0)
    return fmt::format("{} hour{} {} minutes", whole / 60, whole / 60 == 1 ? "" : "s", whole % 60);
  return fmt::format("{} {}", whole, dice.below(2) == 0 ? "minutes" : "min");
}

std::string process_words(const Parts& parts, Dice& dice) {
  std::string method = parts.method;
  if (method == "boiling water") method = dice.below(2) == 0 ? "boiling-water canner" : "water-bath canner";
  if (method == "pressure canner" && !parts.gauge.empty()) method = parts.gauge + "-gauge pressure canner";
  std::string jars;
  for (const auto& jar : parts.jars) jars += (jars.empty() ? "" : " and ") + plural(jar);
  std::string pressure;
  if (!parts.pressure.empty()) {
    const auto psi = parts.pressure.substr(0, parts.pressure.find(' '));
    pressure = fmt::format(fmt::runtime(dice.below(2) == 0 ? " at {} pounds pressure" : " at {} psi"), psi);
  }
  std::string altitude = parts.altitude.empty() ? std::string() : " (" + parts.altitude + ")";
  const auto time = minutes_words(parts.minutes, dice);
  switch (dice.below(4)) {
    case 0:
      return fmt::format("Process {} {} in a {}{}{}.", jars, time, method, pressure, altitude);
    case 1:
      return fmt::format("In a {}, process {} for {}{}{}.", method, jars, time, pressure, altitude);
    case 2:
      return fmt::format("Wipe the rims, put on the lids, and process {} for {}{} in a {}{}.", time, jars,
                         pressure, method, altitude);
    default:
      return fmt::format("Set the jars in a {}. Process {} {}{}{}, then let them cool overnight.", method,
                         jars, time, pressure, altitude);
  }
}

std::string card_of(const Invented& recipe, const Parts& parts,
                    const std::vector<std::pair<std::string, std::string>>& lines) {
  std::string out = "recipe: " + in_quotes(recipe.title) + "\ningredients:\n";
  for (const auto& [each, line] : lines)
    out += each.empty() ? "  - " + in_quotes(line) + "\n" : "  - " + each + ": " + in_quotes(line) + "\n";
  if (!parts.pack.empty()) out += "pack: " + parts.pack + "\n";
  out += "jars: [";
  for (std::size_t i = 0; i < parts.jars.size(); ++i) out += (i == 0 ? "" : ", ") + parts.jars[i];
  out += "]\nheadspace: " + parts.headspace + "\nprocess:\n  method: " + parts.method + "\n";
  if (!parts.gauge.empty()) out += "  gauge: " + parts.gauge + "\n";
  if (!parts.pressure.empty()) out += "  pressure: " + parts.pressure + "\n";
  out += fmt::format("  time: {} minutes\n", static_cast<int>(parts.minutes));
  if (!parts.altitude.empty()) out += "  altitude: " + parts.altitude + "\n";
  out += "steps:\n";
  for (const auto& step : recipe.directions) out += "  - " + in_quotes(step) + "\n";
  return out;
}

Invented vary(const yaml::Node& base, Parts parts, int variant, Dice& dice) {
  static constexpr std::array<std::string_view, 6> places{"Thistle Lane",  "Ridge road",    "Mill Pond",
                                                          "Quince Hollow", "Harbor Street", "Long Acre"};
  Invented recipe;
  recipe.title = std::string(dice.one_of(places)) + " " + std::string(base.find("recipe")->text);
  recipe.title[0] = static_cast<char>(std::toupper(static_cast<unsigned char>(recipe.title[0])));
  // One in three keeps the tested figures; the others drift as web recipes do.
  if (variant % 3 == 1) parts.minutes = std::max(5.0, std::floor(parts.minutes * 0.6 / 5) * 5);
  if (variant % 3 == 2) parts.headspace = dice.below(2) == 0 ? "1/8 inch" : "2 inches";
  if (variant % 4 == 3) parts.altitude.clear();

  std::vector<std::pair<std::string, std::string>> lines;
  std::vector<std::string> into_jars;
  for (const auto& item : base.find("ingredients")->items) {
    if (item.is_scalar()) {
      lines.emplace_back(std::string(), item.text);
      recipe.ingredients.emplace_back(item.text);
    } else if (item.is_map() && item.entries.size() == 1 && item.entries.front().value.is_scalar()) {
      const auto& entry = item.entries.front();
      lines.emplace_back(entry.key, entry.value.text);
      const std::string jar(entry.key.substr(5));
      if (dice.below(2) == 0)
        recipe.ingredients.push_back(std::string(entry.value.text) + " per " + jar);
      else
        into_jars.push_back(
            fmt::format("Add {} to each {}.", entry.value.text, jar == "jar" ? jar : jar + " jar"));
    }
  }
  if (const auto* steps = base.find("steps")) {
    if (steps->is_scalar()) recipe.directions.emplace_back(steps->text);
    for (const auto& step : steps->items) recipe.directions.emplace_back(step.text);
  }
  recipe.directions.push_back(fill_words(parts, dice));
  for (const auto& sentence : into_jars) recipe.directions.push_back(sentence);
  recipe.directions.push_back(process_words(parts, dice));
  recipe.minutes = parts.minutes;
  const auto headspace = quantity::read_headspace(parts.headspace);
  if (const auto* read = std::get_if<Interval<Headspace>>(&headspace))
    recipe.headspace_inches = in_inches(read->low);
  recipe.jars = parts.jars;
  recipe.card = card_of(recipe, parts, lines);
  return recipe;
}

Json schema(const Invented& recipe, bool steps_as_objects) {
  Json json{{"@context", "https://schema.org"}, {"@type", "Recipe"}, {"name", recipe.title}};
  json["recipeIngredient"] = recipe.ingredients;
  auto& steps = json["recipeInstructions"] = Json::array();
  for (const auto& step : recipe.directions)
    steps.push_back(steps_as_objects ? Json{{"@type", "HowToStep"}, {"text", step}} : Json(step));
  return json;
}

std::string escaped(std::string_view text) {
  std::string out;
  for (const char c : text) out += c == '&' ? "&amp;" : c == '<' ? "&lt;" : std::string(1, c);
  return out;
}

std::string html(const Invented& recipe, bool microdata) {
  std::string out =
      "<!DOCTYPE html>\n<html><head><meta charset=\"utf-8\"><title>" + escaped(recipe.title) + "</title>\n";
  if (!microdata) {
    const Json graph{{"@context", "https://schema.org"},
                     {"@graph", Json::array({Json{{"@type", "WebPage"}}, schema(recipe, true)})}};
    return out + "<script type=\"application/ld+json\">\n" + graph.dump(1) +
           "\n</script></head><body><p>Hello<br>there</body></html>\n";
  }
  out += "</head><body><div itemscope itemtype=\"https://schema.org/Recipe\">\n<h1 itemprop=\"name\">" +
         escaped(recipe.title) +
         "</h1>\n<div itemprop=\"author\" itemscope itemtype=\"https://schema.org/Person\"><span "
         "itemprop=\"name\">The kitchen</span></div>\n<ul>\n";
  for (const auto& line : recipe.ingredients)
    out += "<li itemprop=\"recipeIngredient\">" + escaped(line) + "\n";
  out += "</ul>\n<ol itemprop=\"recipeInstructions\">\n";
  for (const auto& step : recipe.directions) out += "<li>" + escaped(step) + "</li>\n";
  return out + "</ol></div></body></html>\n";
}

/// A page that says nothing in schema.org's words, between a site's own parts.
std::string bare_html(const Invented& recipe, bool article) {
  std::string out =
      "<!DOCTYPE html>\n<html><head><title>" + escaped(recipe.title) +
      " - The larder</title>\n<style>p {}</style></head><body class=\"comments\"><header><h1>The "
      "larder</h1></header><nav><ul><li>2 cups of links</ul></nav>\n";
  out += article ? "<article>\n" : "<div>";
  out += "<h2>" + escaped(recipe.title) + "</h2>\n";
  if (!article) out.replace(out.rfind("<h2>"), 4, "<h1>").replace(out.rfind("</h2>"), 5, "</h1>");
  out += "<p><strong>Ingredients</strong></p><ul>\n";
  for (const auto& line : recipe.ingredients) out += "<li><span>" + escaped(line) + "</span>\n";
  out += "</ul><h3>Directions</h3>\n";
  for (const auto& step : recipe.directions) out += "<p>" + escaped(step) + "\n";
  out += article ? "</article>" : "</div>";
  return out + "<div id=comments><p>I boil mine in an oven.</div><footer>Share</footer></body></html>\n";
}

std::string markdown(const Invented& recipe, bool fields_in_front) {
  std::string out = "---\nlayout: recipe\ntags: [larder, canning]\n";
  if (fields_in_front) {
    out += "title: " + in_quotes(recipe.title) + "\nrecipeIngredient:\n";
    for (const auto& line : recipe.ingredients) out += "  - " + in_quotes(line) + "\n";
    out += "---\n\n";
    for (const auto& step : recipe.directions) out += step + "\n\n";
    return out;
  }
  out += "---\n\n# " + recipe.title + "\n\n## Ingredients\n\n";
  for (const auto& line : recipe.ingredients) out += "- " + line + "\n";
  out += "\n## Directions\n\n";
  int number = 0;
  for (const auto& step : recipe.directions) out += fmt::format("{}. {}\n", ++number, step);
  return out;
}

std::string plain(const Invented& recipe, bool numbered) {
  std::string out = recipe.title + "\n\nIngredients:\n";
  for (const auto& line : recipe.ingredients) out += line + "\n";
  out += "\nDirections:\n";
  int number = 0;
  for (const auto& step : recipe.directions)
    out += numbered ? fmt::format("{}. {}\n", ++number, step) : step + "\n\n";
  return out;
}

/// A card whose directions are its steps, and no key says what they tell.
std::string with_steps(const Invented& recipe) {
  const auto quoted = [](const std::string& text) { return nlohmann::json(text).dump(); };
  std::string out = "recipe: " + quoted(recipe.title) + "\ningredients:\n";
  for (const auto& line : recipe.ingredients) out += "  - " + quoted(line) + "\n";
  out += "steps:\n";
  for (const auto& step : recipe.directions) out += "  - " + quoted(step) + "\n";
  return out;
}

}  // namespace

std::vector<Invented> invent(const std::vector<yaml::Node>& bases, std::uint32_t seed, int variants) {
  Dice dice(seed);
  std::vector<Invented> out;
  for (const auto& base : bases) {
    Parts parts;
    if (!read_parts(base, parts)) continue;
    for (int variant = 0; variant < variants; ++variant) out.push_back(vary(base, parts, variant, dice));
  }
  return out;
}

std::vector<Published> publish(const Invented& recipe, std::uint32_t seed) {
  const bool odd = seed % 2 == 1;
  return {{"card.yaml", recipe.card},
          {"page.md", markdown(recipe, odd)},
          {"recipe.jsonld", schema(recipe, !odd).dump(2) + "\n"},
          {"page.html", html(recipe, odd)},
          {"recipe.txt", plain(recipe, odd)},
          {"recipes.ndjson", schema(recipe, odd).dump() + "\n"},
          {"bare.html", bare_html(recipe, odd)},
          {"steps.yaml", with_steps(recipe)}};
}

}  // namespace sealworthy::prose_test
