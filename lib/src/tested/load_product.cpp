#include "tested/load_product.hpp"

#include <algorithm>

#include "tested/load_formula.hpp"
#include "tested/load_rows.hpp"
#include "text/nearest.hpp"

namespace sealworthy::tested {
namespace {

const std::vector<std::string_view> printed_words(printed_names.begin(), printed_names.end());

void read_source_of(checks::Fields& fields, Product& product, const LoadContext& context) {
  const auto* own = fields.find("publication");
  product.publication = own != nullptr ? std::string(own->text) : context.publication;
  const auto section = fields.text("section");
  const auto page = fields.text("page");
  const auto* name = context.sources.name(product.publication);
  if (name == nullptr) {
    context.add(own != nullptr ? own->at : fields.at(),
                "no such source as '" + product.publication + "' in rules/sources.yaml");
    return;
  }
  const bool at_home = own == nullptr;
  product.source = cite(*name, !section.empty() ? section : at_home ? context.section : "", page);
}

std::optional<Interval<Headspace>> read_inches(const yaml::Node& node, const LoadContext& context) {
  const auto read = quantity::read_headspace(node.text);
  if (const auto* error = std::get_if<quantity::FigureError>(&read)) {
    context.add(node.at, error->message, error->suggestion);
    return std::nullopt;
  }
  const auto inches = std::get<Interval<Headspace>>(read);
  const auto& known = context.sizes.headspaces;
  for (const auto& end : {inches.low, inches.high})
    if (std::find(known.begin(), known.end(), end) == known.end())
      context.wrong(Printed::headspace, node.at,
                    "no table asks for a headspace of " + std::string(node.text));
  return inches;
}

void read_headspace(checks::Fields& fields, Product& product, const LoadContext& context) {
  const auto* node = fields.find("headspace");
  if (node == nullptr) {
    context.add(fields.at(), "'headspace' is missing");
    return;
  }
  if (node->is_scalar()) {
    if (const auto inches = read_inches(*node, context)) product.headspace.push_back({*inches, {}, {}, ""});
    return;
  }
  for (const auto& item : node->items) {
    checks::Fields one(item, "headspace", context.sink);
    HeadspaceRule rule;
    if (const auto pack = one.choice("pack", pack_words)) rule.pack = static_cast<recipe::Pack>(*pack);
    if (const auto* jar = one.find("jar")) rule.jar = context.sizes.read(*jar, context.sink);
    rule.part = one.text("part");
    const auto* leave = one.find("leave");
    one.done();
    const auto inches = leave != nullptr ? read_inches(*leave, context) : std::nullopt;
    if (!inches) {
      context.add(item.at, "a headspace needs `leave:`");
      continue;
    }
    rule.inches = *inches;
    product.headspace.push_back(std::move(rule));
  }
}

void read_acid(checks::Fields& fields, Product& product, const LoadContext& context) {
  const auto* list = fields.find("acid-per-jar");
  if (list == nullptr) return;
  for (const auto& node : list->items) {
    checks::Fields one(node, "acid per jar", context.sink);
    AcidPerJar acid;
    const auto* jar = one.find("jar");
    if (const auto size = jar != nullptr ? context.sizes.read(*jar, context.sink) : std::nullopt)
      acid.jar = *size;
    const auto* choices = one.find("one-of");
    one.done();
    if (jar == nullptr || choices == nullptr) {
      context.add(node.at, "acid per jar needs a jar and `one-of`");
      continue;
    }
    for (const auto& item : choices->items) {
      checks::Fields choice(item, "acid", context.sink);
      std::vector<std::string> foods;
      if (const auto* food = choice.find("food")) context.read_foods(*food, foods);
      const auto* amount = choice.find("amount");
      const auto strength = read_strength(choice, context);
      choice.done();
      const auto read = amount != nullptr ? read_whole_amount(*amount, context) : std::nullopt;
      if (foods.size() == 1 && read)
        acid.one_of.push_back({foods.front(), *read, strength});
      else
        context.add(item.at, "acid per jar needs one food and its amount");
    }
    product.acid_per_jar.push_back(std::move(acid));
  }
}

void read_pieces(checks::Fields& fields, Product& product, const LoadContext& context) {
  const auto* node = fields.find("largest-piece");
  if (node == nullptr) return;
  const auto take = [&](std::string_view form, const yaml::Node& size) {
    const auto read = quantity::read_piece_size(size.text);
    if (const auto* pieces = std::get_if<Interval<PieceSize>>(&read))
      product.piece_limits.push_back({std::string(form), pieces->high});
    else
      context.add(size.at, std::get<quantity::FigureError>(read).message);
  };
  if (node->is_map())
    for (const auto& entry : node->entries) take(entry.key, entry.value);
  else
    take("", *node);
  for (const auto& limit : product.piece_limits)
    product.largest_piece = std::max(product.largest_piece.value_or(limit.size), limit.size);
}

void read_identity(checks::Fields& fields, Product& product, const LoadContext& context) {
  const auto* node = fields.find("identify");
  if (node == nullptr) return;
  checks::Fields one(*node, "identify", context.sink);
  auto& identity = product.identity;
  const auto foods = [&](std::string_view key, std::vector<std::string>& out) {
    if (const auto* list = one.find(key)) context.read_foods(*list, out);
  };
  foods("all-of", identity.all_of);
  foods("any-of", identity.any_of);
  identity.at_least = static_cast<int>(one.number("at-least").value_or(1));
  foods("may", identity.may);
  identity.form_any = one.list("form-any");
  identity.form_none = one.list("form-none");
  identity.form_may = one.list("form-may");
  identity.names = one.list("names");
  identity.asks = one.text("asks");
  one.done();
}

void read_rows(checks::Fields& fields, Product& product, const LoadContext& context) {
  const auto* list = fields.find("rows");
  std::vector<Position> places;
  if (list != nullptr) product.rows.reserve(list->items.size());
  if (list != nullptr)
    for (const auto& node : list->items) load_row(node, product.read, context, product.rows, places);
  for (std::size_t i = 0; i < product.rows.size(); ++i) {
    product.rows[i].source = product.source;
    if (product.acid_class == ProductClass::low_acid && product.rows[i].method == TableMethod::boiling_water)
      context.add(places[i], "a low-acid product has no boiling-water process");
  }
  check_rows(product.rows, places, context);
  if (product.rows.empty() && !product.kept_cold)
    context.add(fields.at(), "a product needs rows, or `kept-cold: yes`");
}

/// `sterile-jars: under 10 minutes`.
void read_sterile_jars(checks::Fields& fields, Product& product, const LoadContext& context) {
  constexpr std::string_view under = "under ";
  const auto* node = fields.find("sterile-jars");
  if (node == nullptr) return;
  if (node->text.starts_with(under)) {
    const auto read = quantity::read_time(node->text.substr(under.size()));
    if (const auto* time = std::get_if<Interval<Duration>>(&read)) {
      product.sterile_jars_under = time->low;
      product.sterile_jars_under_10_minutes = true;
      return;
    }
  }
  context.add(node->at, "'" + std::string(node->text) + "' does not say under what time",
              "write `sterile-jars: under 10 minutes`");
}

void read_preparation(checks::Fields& fields, Product& product, const LoadContext& context) {
  product.covering = fields.text("covering");
  read_pieces(fields, product, context);
  product.assumed = fields.list("assumed");
  product.required = fields.list("required");
  read_sterile_jars(fields, product, context);
  product.low_temperature_pasteurization = fields.flag("low-temperature-pasteurization");
  product.jar_kind = fields.text("jar-kind");
  product.canner = fields.text("canner");
  product.kept_cold = fields.flag("kept-cold");
  product.same_process_as = fields.text("same-process-as");
  product.why_no_process = fields.text("no-tested-process");
  product.no_tested_process = !product.why_no_process.empty();
}

void check_printed(checks::Fields& fields, const LoadContext& context) {
  for (std::size_t i = 0; i < printed_names.size(); ++i)
    if ((context.printed & ~context.printed_needed & (1U << i)) != 0)
      context.add(fields.at(), "`as-printed: " + std::string(printed_names[i]) +
                                   "` is no longer needed: nothing breaks that check");
}

Product load_product(const yaml::Node& node, LoadContext& context) {
  checks::Fields fields(node, "product", context.sink);
  Product product;
  product.id = fields.text("id", true);
  context.product = product.id;
  context.printed = fields.choices("as-printed", printed_words);
  context.printed_needed = 0;
  product.title = fields.text("title", true);
  read_source_of(fields, product, context);
  product.read = read_mark(fields, Read::reprint);
  if (const auto index = fields.choice("class", class_words, true))
    product.acid_class = static_cast<ProductClass>(*index);
  if (const auto* foods = fields.find("foods"))
    context.read_foods(*foods, product.foods);
  else
    context.add(node.at, "'foods' is missing");
  product.styles = fields.list("styles");
  if (const auto* jars = fields.find("jars"))
    for (const auto& item : jars->items)
      if (const auto jar = context.sizes.read(item, context.sink)) product.jars_allowed.push_back(*jar);
  if (const auto* load = fields.find("canner-load"))
    for (const auto& entry : load->entries) product.canner_load.emplace_back(entry.key, entry.value.text);
  read_headspace(fields, product, context);
  read_acid(fields, product, context);
  read_preparation(fields, product, context);
  read_identity(fields, product, context);
  read_rows(fields, product, context);
  if (const auto* formula = fields.find("formula"))
    product.formula = load_formula(*formula, product.read, context, product.versions);
  product.notes = fields.list("notes");
  check_printed(fields, context);
  fields.done();
  return product;
}

}  // namespace

std::string cite(std::string_view publication, std::string_view section, std::string_view page) {
  std::string text(publication);
  if (!section.empty()) text.append(", ").append(section);
  if (!page.empty()) text.append(", page ").append(page);
  return text;
}

void load_products(const yaml::Document& document, LoadContext& context, std::vector<Product>& products) {
  checks::Fields root(document.root(), "processes", context.sink);
  context.publication = root.text("publication");
  context.section = root.text("section");
  context.read_groups(root.find("food-groups"));
  const auto* list = root.find("products");
  root.done();
  if (list == nullptr || !list->is_sequence()) {
    context.sink.add(document.root().at, "'products:' must be a list");
    return;
  }
  products.reserve(products.size() + list->items.size());
  for (const auto& node : list->items) products.push_back(load_product(node, context));
}

}  // namespace sealworthy::tested
