#include "fail_policy.hpp"

#include <CLI/CLI.hpp>

namespace sealworthy::cli {

void add_fail_options(CLI::App& command, std::string& fail_on, std::string& require) {
  command.add_option("--fail-on", fail_on, "Lowest severity that makes the exit status 1")
      ->check(CLI::IsMember({"danger", "warning", "caution", "notice", "never"}))
      ->capture_default_str();
  command.add_option("--require", require, "tested: exit status 1 unless every card is tested")
      ->check(CLI::IsMember({"tested"}));
}

FailPolicy fail_policy(const std::string& fail_on, const std::string& require) {
  FailPolicy policy{{}, require == "tested"};
  for (const auto s : {Severity::notice, Severity::caution, Severity::warning, Severity::danger})
    if (fail_on == to_string(s)) policy.at = s;
  return policy;
}

}  // namespace sealworthy::cli
