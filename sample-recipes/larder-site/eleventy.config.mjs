// The recipes are cards under recipes/; each becomes a page. Before anything is built they are checked.
import { execFileSync } from "node:child_process";
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import yaml from "js-yaml";

function cards(folder) {
  return readdirSync(folder, { withFileTypes: true, recursive: true })
    .filter((entry) => entry.isFile() && /\.ya?ml$/.test(entry.name))
    .map((entry) => join(entry.parentPath ?? entry.path, entry.name))
    .sort();
}

// Throws, and so stops the build, when a recipe is dangerous (exit status 1) or can't be read (2).
function checkRecipes() {
  const known = existsSync("known-findings.json") ? ["--baseline", "known-findings.json"] : [];
  execFileSync("sealworthy", ["check", "--fail-on", "danger", ...known, "--output", "text:-", "--output",
    "sarif:recipes.sarif", "recipes"], { stdio: "inherit" });
}

export default function (config) {
  config.on("eleventy.before", checkRecipes);
  config.addGlobalData("recipes", () =>
    cards("recipes").flatMap((path) => yaml.loadAll(readFileSync(path, "utf8"), undefined, { schema: yaml.CORE_SCHEMA }))
      .filter((card) => card?.recipe)
      .map((card) => ({ ...card, slug: card.recipe.toLowerCase().replace(/[^a-z0-9]+/g, "-") })));
  return { dir: { input: "pages", output: "_site" } };
}
