#include <fmt/format.h>
#include <spdlog/spdlog.h>

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <ctime>
#include <filesystem>
#include <sealworthy/values.hpp>

#include "commands.hpp"
#include "paths.hpp"

namespace sealworthy::cli {
namespace {

constexpr std::size_t rules_limit = 1 << 20;

}  // namespace

void tell(const std::string& message) { spdlog::error("{}", message); }

void tell(const InputError& error) {
  std::string text = error.path;
  if (error.at.line > 0) text += fmt::format(":{}:{}", error.at.line, error.at.column);
  if (!text.empty()) text += ": ";
  text += error.message;
  if (!error.suggestion.empty()) text += " (" + error.suggestion + ")";
  tell(text);
}

std::optional<Checker> make_checker(const Common& common) {
  if (common.rules.empty()) return Checker::builtin();
  auto expanded = expand(common.rules);
  std::vector<std::pair<std::string, std::string>> files;
  for (const auto& path : expanded.files) {
    auto text = read_file(path, rules_limit);
    if (auto* trouble = std::get_if<Trouble>(&text))
      expanded.troubles.push_back(std::move(*trouble));
    else
      files.emplace_back(path, std::get<std::string>(std::move(text)));
  }
  for (const auto& trouble : expanded.troubles) tell({trouble.path, {}, trouble.message, {}});
  if (!expanded.troubles.empty()) return std::nullopt;
  auto checker = Checker::with_rules(files);
  if (const auto* errors = std::get_if<std::vector<InputError>>(&checker)) {
    for (const auto& error : *errors) tell(error);
    return std::nullopt;
  }
  return std::get<Checker>(std::move(checker));
}

std::optional<Interval<Altitude>> read_altitude_option(const std::string& text) {
  auto altitude = read_altitude(text);
  if (auto* error = std::get_if<InputError>(&altitude)) {
    error->path = "--altitude";
    tell(*error);
    return std::nullopt;
  }
  return std::get<Interval<Altitude>>(altitude);
}

std::string local_date() {
  const auto now = std::chrono::system_clock::to_time_t(std::chrono::system_clock::now());
  std::tm parts{};
  localtime_r(&now, &parts);
  return fmt::format("{:04}-{:02}-{:02}", parts.tm_year + 1900, parts.tm_mon + 1, parts.tm_mday);
}

std::string date_error(const std::string& text) {
  int year = 0, month = 0, day = 0;
  char end = 0;
  if (text.size() == 10 && std::sscanf(text.c_str(), "%4d-%2d-%2d%c", &year, &month, &day, &end) == 3 &&
      std::chrono::year_month_day(std::chrono::year(year), std::chrono::month(static_cast<unsigned>(month)),
                                  std::chrono::day(static_cast<unsigned>(day)))
          .ok())
    return {};
  return "'" + text + "' is no date; write it like 2026-08-31";
}

}  // namespace sealworthy::cli
