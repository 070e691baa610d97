#include "outputs.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <filesystem>
#include <system_error>

namespace sealworthy::cli {
namespace {

/// "sarif:report.sarif" -> "sarif"; empty where no word stands before a colon.
std::string_view format_word(std::string_view value) {
  const auto colon = value.find(':');
  if (colon == std::string_view::npos) return {};
  const auto word = value.substr(0, colon);
  const bool letters = std::all_of(word.begin(), word.end(), [](char c) { return c >= 'a' && c <= 'z'; });
  return letters ? word : std::string_view();
}

std::string base_folder() {
  std::error_code error;
  const auto here = std::filesystem::current_path(error);
  return error ? std::string() : here.generic_string();
}

}  // namespace

OutputPlaces output_places(const std::vector<std::string>& values, const std::string& format) {
  const auto plain = report_format(format).value_or(ReportFormat::text);
  OutputPlaces out;
  if (values.empty()) out.places.push_back({plain, "-"});
  for (const auto& value : values) {
    OutputPlace place{plain, value};
    if (const auto word = format_word(value); !word.empty()) {
      const auto named = report_format(word);
      if (!named) {
        out.error = fmt::format("no format is called '{}' ({}); for a file of this name write ./{}", word,
                                fmt::join(report_formats, ", "), value);
        return out;
      }
      place = {*named, value.substr(word.size() + 1)};
    }
    if (place.path.empty()) place.path = "-";
    const auto same = [&](const OutputPlace& other) { return other.path == place.path; };
    if (std::any_of(out.places.begin(), out.places.end(), same)) {
      out.error = fmt::format("two reports can't both be written to {}",
                              place.path == "-" ? "standard output" : place.path);
      return out;
    }
    out.places.push_back(std::move(place));
  }
  return out;
}

Outputs::Outputs(const std::vector<OutputPlace>& places, const Checker& checker, const std::string& color,
                 const FailPolicy& fail) {
  for (const auto& place : places) {
    auto output = std::make_unique<Output>(place.path);
    if (!output->ok()) {
      failed_ = place.path;
      return;
    }
    const bool terminal = place.path == "-" && is_terminal(Stream::out);
    const TextStyle style{terminal_width(Stream::out), use_color(color, terminal)};
    all_.push_back(
        {std::move(output), make_writer(place.format, checker, {style, base_folder(), fail}), terminal, {}});
  }
}

void Outputs::put(One& one, const std::string& text, bool now) {
  constexpr std::size_t piece = 1 << 15;
  one.pending += text;
  if (!now && !one.terminal && one.pending.size() < piece) return;
  written_ = one.output->write(one.pending) && written_;
  one.pending.clear();
}

void Outputs::begin() {
  for (auto& one : all_) put(one, one.writer->begin());
}

void Outputs::recipe(const RecipeReport& report) {
  for (auto& one : all_) put(one, one.writer->recipe(report));
}

void Outputs::end(const Summary& summary) {
  for (auto& one : all_) put(one, one.writer->end(summary), true);
}

}  // namespace sealworthy::cli
