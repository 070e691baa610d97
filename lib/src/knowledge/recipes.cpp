#include "knowledge/recipes.hpp"

#include <algorithm>

#include "prose/steps_of_card.hpp"
#include "prose/understand.hpp"
#include "recipe/reader.hpp"

namespace sealworthy::knowledge {
namespace {

using recipe::Recipe;

/// What tells that two recipes of one file are the same.
bool same(const Recipe& a, const Recipe& b) {
  const auto equal = [](const auto& x, const auto& y, auto&& text) {
    return std::equal(x.begin(), x.end(), y.begin(), y.end(),
                      [&](const auto& l, const auto& r) { return text(l) == text(r); });
  };
  return a.title.value == b.title.value &&
         equal(a.ingredients, b.ingredients, [](const auto& line) { return line.text; }) &&
         equal(a.steps, b.steps, [](const auto& step) { return step.value; });
}

recipe::TextWords text_words(const prose::Vocabulary& words, const Asked& asked) {
  using prose::Sense;
  using recipe::Section;
  return {[&words](std::string_view heading) {
            if (words.is(heading, Sense::heading_ingredients)) return Section::ingredients;
            if (words.is(heading, Sense::heading_directions)) return Section::directions;
            if (words.is(heading, Sense::heading_notes)) return Section::notes;
            if (words.is(heading, Sense::heading_other)) return Section::other;
            return Section::none;
          },
          [&words](std::string_view line) { return words.begins_with(line, Sense::yield); },
          [&words](std::string_view bytes) { return words.may_speak_of_canning(bytes); }, asked.all,
          asked.named};
}

/// `lines`: each line stands for itself, so a recipe is looked for twice in its own line only.
FoundRecipes found_in(const std::vector<recipe::Piece>& pieces, bool lines, const Knowledge& knowledge,
                      bool all) {
  FoundRecipes found;
  int number = 0;
  std::vector<Recipe> from_pages;
  for (const recipe::Piece& piece : pieces) {
    ++number;
    if (const auto* bad = std::get_if<recipe::BadPage>(&piece)) {
      found.recipes.push_back({number, std::string(bad->title), bad->error});
    } else if (const auto* document = std::get_if<yaml::Document>(&piece)) {
      FoundRecipe one{number, {}, yaml::Error{}};
      recipe::RecipeOrError card = recipe::read_card(*document);
      if (auto* recipe = std::get_if<Recipe>(&card)) {
        recipe->document = number;
        const bool told = prose::fill_from_steps(*recipe, knowledge.directions);
        recipe->homes = prose::homes_told(*recipe, knowledge.directions);
        if (!told) recipe->doubts = prose::other_processes(*recipe, knowledge.directions, knowledge.methods);
        one.recipe = std::move(*recipe);
      } else {
        one.recipe = std::get<yaml::Error>(std::move(card));
        const yaml::Node* title = document->root().is_map() ? document->root().find("recipe") : nullptr;
        if (title != nullptr && title->is_scalar()) one.title = title->text;
      }
      found.recipes.push_back(std::move(one));
    } else {
      const auto& page = std::get<recipe::Page>(piece);
      auto understood = prose::understand(page, knowledge.directions);
      if (auto* error = std::get_if<yaml::Error>(&understood)) {
        found.recipes.push_back({number, std::string(page.title.text), std::move(*error)});
        continue;
      }
      auto& good = std::get<prose::Understood>(understood);
      const auto line_of = [](const Recipe& recipe) { return recipe.title.at.line; };
      if (lines && !from_pages.empty() && line_of(from_pages.back()) != line_of(good.recipe))
        from_pages.clear();
      const bool twice = std::any_of(from_pages.begin(), from_pages.end(),
                                     [&](const Recipe& r) { return same(r, good.recipe); });
      if (twice) {
        --number;
        continue;
      }
      from_pages.push_back(good.recipe);
      if (!good.canning && !all) {
        ++found.skipped;
        continue;
      }
      good.recipe.document = number;
      // A page without a title: what is said of the whole recipe points at its first line.
      if (auto& at = good.recipe.title.at; at.line < 1)
        at = good.recipe.ingredients.empty() ? Position{1, 1} : good.recipe.ingredients.front().at;
      found.recipes.push_back({number, {}, std::move(good.recipe)});
    }
  }
  return found;
}

}  // namespace

FoundRecipes find_recipes(std::string_view path, std::string_view text, const Knowledge& knowledge,
                          const Asked& asked) {
  const auto kind = recipe::kind_of(path, text);
  const auto pieces = recipe::read_pieces(path, text, text_words(knowledge.directions, asked));
  auto found = found_in(pieces, kind == recipe::FileKind::json_lines, knowledge, asked.all);
  if (pieces.empty() && kind != recipe::FileKind::card) ++found.skipped;
  return found;
}

FoundRecipes find_in_lines(std::string_view lines, int first_line, const Knowledge& knowledge, bool all) {
  return found_in(recipe::read_json_lines(lines, first_line), true, knowledge, all);
}

}  // namespace sealworthy::knowledge
