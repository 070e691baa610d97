#include "tested/change.hpp"

namespace sealworthy::tested {
namespace {

const std::vector<std::string_view> does_words{"more", "less", "leave-out", "swap", "add"};
const std::vector<std::string_view> total_words{"same", "at-least"};

Change load_change(const yaml::Node& node, LoadContext& context) {
  checks::Fields fields(node, "change", context.sink);
  Change change;
  change.id = fields.text("id", true);
  context.product = change.id;
  change.does = fields.choices("does", does_words);
  change.roles = fields.list("role");
  if (const auto* foods = fields.find("foods")) context.read_foods(*foods, change.foods);
  change.not_main = fields.flag("not-main");
  if (const auto* to = fields.find("to")) context.read_foods(*to, change.to);
  change.to_states = fields.list("to-state");
  change.at_least = fields.choice("total", total_words).value_or(0) == 1;
  change.classes = fields.choices("class", class_words);
  change.says = fields.text("says", true);
  change.read = read_mark(fields, Read::reprint);
  if (const auto* source = fields.find("source"))
    change.source = context.sources.cite(*source, context.sink.file, context.sink.errors);
  fields.done();
  if (change.does == 0) context.sink.add(node.at, "change " + change.id + ": 'does' is missing");
  if (change.source.empty()) context.sink.add(node.at, "change " + change.id + ": 'source' is missing");
  if ((change.does & (Change::swap | Change::add)) != 0 && change.to.empty())
    context.sink.add(node.at, "change " + change.id + ": 'to' must say which foods");
  return change;
}

}  // namespace

void load_changes(const yaml::Document& document, LoadContext& context, std::vector<Change>& changes) {
  checks::Fields root(document.root(), "changes", context.sink);
  context.read_groups(root.find("food-groups"));
  const auto* list = root.find("changes");
  root.done();
  if (list == nullptr || !list->is_sequence()) {
    context.sink.add(document.root().at, "'changes:' must be a list");
    return;
  }
  changes.reserve(changes.size() + list->items.size());
  for (const auto& node : list->items) changes.push_back(load_change(node, context));
}

}  // namespace sealworthy::tested
