#pragma once

/// The catalogue of rules/foods, loaded once, and files of tests/data.

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>
#include <utility>
#include <vector>

#include "foods/catalogue.hpp"

namespace foods_test {

namespace foods = sealworthy::foods;
namespace quantity = sealworthy::quantity;
namespace yaml = sealworthy::yaml;

inline std::string file_text(const std::filesystem::path& path) {
  std::ifstream in(path);
  return {std::istreambuf_iterator<char>(in), {}};
}

/// Loads documents of one YAML text into a catalogue.
inline void load_text(foods::Catalogue& catalogue, std::string_view file, std::string_view text,
                      std::vector<foods::LoadError>& errors) {
  for (const auto& read : yaml::read_documents(text)) {
    if (const auto* document = std::get_if<yaml::Document>(&read))
      catalogue.load(file, *document, errors);
    else
      errors.push_back({std::string(file), std::get<yaml::BadDocument>(read).error});
  }
}

struct Loaded {
  foods::Catalogue catalogue;
  std::vector<foods::LoadError> errors;
};

inline const Loaded& loaded() {
  static const Loaded once = [] {
    Loaded made;
    std::vector<std::filesystem::path> files;
    for (const auto& entry : std::filesystem::directory_iterator(SEALWORTHY_SOURCE_DIR "/rules/foods"))
      files.push_back(entry.path());
    std::sort(files.begin(), files.end());
    for (const auto& file : files)
      load_text(made.catalogue, file.filename().string(), file_text(file), made.errors);
    made.catalogue.finish(made.errors);
    return made;
  }();
  return once;
}

inline const foods::Catalogue& catalogue() { return loaded().catalogue; }

inline std::vector<std::string> split(const std::string& line, char by) {
  std::vector<std::string> parts;
  for (std::size_t from = 0;;) {
    const auto at = line.find(by, from);
    parts.push_back(line.substr(from, at - from));
    if (at == std::string::npos) return parts;
    from = at + 1;
  }
}

/// The lines of a file of tests/data without comments, in columns.
inline std::vector<std::vector<std::string>> data_rows(const std::string& file) {
  std::ifstream in(std::string(SEALWORTHY_SOURCE_DIR "/tests/data/") + file);
  std::vector<std::vector<std::string>> rows;
  for (std::string line; std::getline(in, line);)
    if (!line.empty() && line.front() != '#') rows.push_back(split(line, '\t'));
  return rows;
}

inline foods::LineReading read(std::string_view line) {
  return catalogue().read_line(line, quantity::Units::us);
}

/// "lime-juice-fresh | orange-juice" for alternatives, "+" for foods that are all meant, "?" for one not
/// known.
inline std::string ids(const foods::LineReading& reading) {
  std::string out;
  for (const auto& named : reading.foods) {
    if (!out.empty()) out += reading.all_of ? " + " : " | ";
    out += named.food == nullptr ? "?" : named.food->id;
  }
  return out;
}

inline std::string joined(const std::vector<std::string>& words) {
  std::string out;
  for (const auto& word : words) out += (out.empty() ? "" : " ") + word;
  return out;
}

}  // namespace foods_test
