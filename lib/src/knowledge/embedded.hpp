#pragma once

#include <string_view>

namespace sealworthy {

/// The rules of rules/**/*.yaml as they were when the library was built, in the form of yaml::pack, sorted by
/// path; names are paths from the top of the project ("rules/methods.yaml"). The bytes live as long as the
/// program.
std::string_view embedded_rules();

}  // namespace sealworthy
