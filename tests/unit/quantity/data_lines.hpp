#pragma once

/// Reads the tab-separated files of tests/data: rows of columns, comment lines and the line of names left
/// out.

#include <fstream>
#include <string>
#include <string_view>
#include <vector>

namespace sealworthy::test {

using Row = std::vector<std::string>;

inline std::vector<Row> data_rows(const std::string& name, std::size_t columns) {
  std::ifstream file(std::string(SEALWORTHY_SOURCE_DIR) + "/tests/data/" + name);
  std::vector<Row> rows;
  bool named = false;
  for (std::string line; std::getline(file, line);) {
    if (line.empty() || line[0] == '#') continue;
    if (!named) {
      named = true;
      continue;
    }
    Row row;
    std::string_view rest = line;
    while (true) {
      const auto tab = rest.find('\t');
      row.emplace_back(rest.substr(0, tab));
      if (tab == std::string_view::npos) break;
      rest.remove_prefix(tab + 1);
    }
    row.resize(std::max(columns, row.size()));
    rows.push_back(std::move(row));
  }
  return rows;
}

}  // namespace sealworthy::test
