#pragma once

/// --fail-on and --require, for the commands that judge reports.

#include <sealworthy/formats.hpp>
#include <string>

namespace CLI {
class App;
}

namespace sealworthy::cli {

void add_fail_options(CLI::App& command, std::string& fail_on, std::string& require);
FailPolicy fail_policy(const std::string& fail_on, const std::string& require);

}  // namespace sealworthy::cli
