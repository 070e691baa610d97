#include "tested/load_rows.hpp"

#include <algorithm>

namespace sealworthy::tested {
namespace {

constexpr std::string_view ruled_out = "not recommended";

/// `bands-read:` names the bands that were read on a page although the row rests on memory.
struct Marks {
  Read row = Read::reprint;
  std::vector<Band> read_bands;

  [[nodiscard]] Read of(const Band& band) const {
    const auto same = [&](const Band& b) { return b.from == band.from && b.to == band.to; };
    return std::any_of(read_bands.begin(), read_bands.end(), same) ? Read::reprint : row;
  }
};

Marks read_marks(checks::Fields& fields, Read product_read, const LoadContext& context) {
  Marks marks;
  marks.row = read_mark(fields, product_read);
  if (const auto* list = fields.find("bands-read"))
    for (const auto& item : list->items) {
      if (const auto band = read_band(item.text))
        marks.read_bands.push_back(*band);
      else
        context.add(item.at, "'" + std::string(item.text) + "' is no altitude band");
    }
  return marks;
}

std::optional<Duration> read_minutes(const yaml::Node& node, const LoadContext& context) {
  const auto figure = read_figure(node.text);
  if (figure && *figure > 0 && *figure == static_cast<int>(*figure) &&
      minutes(*figure) <= context.form.longest)
    return minutes(*figure);
  context.add(node.at, "'" + std::string(node.text) + "' is no time in whole minutes",
              "a time over " + std::to_string(static_cast<int>(in_minutes(context.form.longest))) +
                  " minutes is not taken");
  return std::nullopt;
}

std::optional<Band> read_key(const yaml::Entry& entry, const LoadContext& context) {
  auto band = read_band(entry.key);
  if (!band)
    context.add(entry.key_at, "'" + std::string(entry.key) + "' is no altitude band",
                "write one like 1001-3000 or 6001+, in feet");
  return band;
}

Option read_boiling(const yaml::Node& minutes_by_band, const Marks& marks, const LoadContext& context) {
  Option option;
  option.steps.reserve(minutes_by_band.entries.size());
  for (const auto& entry : minutes_by_band.entries) {
    const auto band = read_key(entry, context);
    const auto time = read_minutes(entry.value, context);
    if (band && time) option.steps.push_back({*band, *time, std::nullopt, false, marks.of(*band)});
  }
  return option;
}

Option read_pressure(checks::Fields& fields, const Marks& marks, const LoadContext& context) {
  Option option;
  const auto* minutes_node = fields.find("minutes");
  const auto* psi = fields.find("psi");
  if (minutes_node == nullptr || psi == nullptr || !minutes_node->is_scalar() || !psi->is_map()) {
    context.add(fields.at(), "a pressure row needs minutes and psi by altitude band");
    return option;
  }
  const auto time = read_minutes(*minutes_node, context);
  if (!time) return option;
  option.steps.reserve(psi->entries.size());
  for (const auto& entry : psi->entries) {
    const auto band = read_key(entry, context);
    if (!band) continue;
    Option::Step step{*band, *time, std::nullopt, entry.value.text == ruled_out, marks.of(*band)};
    if (!step.not_recommended) {
      const auto figure = read_figure(entry.value.text);
      if (!figure || *figure <= 0) {
        context.add(entry.value.at, "'" + std::string(entry.value.text) + "' is no pressure in psi",
                    "write a figure, or `not recommended`");
        continue;
      }
      step.pressure = psi_gauge(*figure);
    }
    option.steps.push_back(step);
  }
  return option;
}

void read_options(checks::Fields& fields, Row& row, Read product_read, const LoadContext& context) {
  const auto marks = read_marks(fields, product_read, context);
  if (const auto* options = fields.find("options")) {
    for (const auto& node : options->items) {
      checks::Fields one(node, "option", context.sink);
      const auto its_marks = read_marks(one, marks.row, context);
      row.options.push_back(read_pressure(one, its_marks, context));
      one.done();
      check_bands(row, row.options.back(), node.at, context);
    }
    return;
  }
  if (row.method == TableMethod::boiling_water) {
    const auto* by_band = fields.find("minutes");
    if (by_band == nullptr || !by_band->is_map()) {
      context.add(fields.at(), "a boiling-water row needs minutes by altitude band");
      return;
    }
    row.options.push_back(read_boiling(*by_band, marks, context));
  } else {
    row.options.push_back(read_pressure(fields, marks, context));
  }
  check_bands(row, row.options.back(), fields.at(), context);
}

void read_packs(checks::Fields& fields, Row& row, const LoadContext& context) {
  const auto* node = fields.find("packs");
  if (node != nullptr && node->text == "not said") return;
  const auto bits = fields.choices("packs", pack_words);
  row.hot = (bits & 1U) != 0;
  row.raw = (bits & 2U) != 0;
  if (bits == 0) context.add(fields.at(), "a row needs packs: [hot], [raw], [hot, raw] or `not said`");
}

std::vector<JarIndex> read_jars(checks::Fields& fields, const LoadContext& context) {
  std::vector<JarIndex> jars;
  const auto* one = fields.find("jar");
  const auto* several = fields.find("jars");
  const auto take = [&](const yaml::Node& node) {
    if (const auto jar = context.sizes.read(node, context.sink)) jars.push_back(*jar);
  };
  if (one != nullptr) take(*one);
  if (several != nullptr)
    for (const auto& item : several->items) take(item);
  if (one == nullptr && several == nullptr) context.add(fields.at(), "a row needs a jar size");
  return jars;
}

}  // namespace

void load_row(const yaml::Node& node, Read product_read, const LoadContext& context, std::vector<Row>& rows,
              std::vector<Position>& places) {
  checks::Fields fields(node, "row", context.sink);
  Row row;
  const auto method = fields.choice("method", method_words, true);
  if (method) row.method = static_cast<TableMethod>(*method);
  read_packs(fields, row, context);
  row.applies_to = fields.text("applies-to");
  if (const auto* foods = fields.find("applies-if")) context.read_foods(*foods, row.applies_if);
  const auto jars = read_jars(fields, context);
  if (method) read_options(fields, row, product_read, context);
  fields.done();
  for (const auto jar : jars) {
    rows.push_back(row);
    rows.back().jar = jar;
    places.push_back(node.at);
  }
}

}  // namespace sealworthy::tested
