#pragma once

/// Putting text into the templates of lib/src/report/page/.

#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace sealworthy::report {

/// Text as it may stand in an element or a quoted attribute.
std::string escaped(std::string_view text);
/// The template with each @NAME@ replaced; the values are markup. A name without a value stays.
std::string filled(std::string_view text,
                   const std::vector<std::pair<std::string_view, std::string>>& values);

}  // namespace sealworthy::report
