#pragma once

#include <yaml-cpp/exceptions.h>

#include <string>
#include <string_view>

#include "yaml/places.hpp"

namespace sealworthy::yaml {

/// What the parser stumbled over, in words for a cook, at the place where it went wrong: often not where the
/// parser noticed (a quote that is never closed is noticed at the end of the file).
Error explain(const YAML::Exception& exception, Places& places);

// Errors that the builder finds where the parser does not.
Error open_quote(Position at);
Error no_colon(Position at, std::string_view name);

/// A text of the file in a message: `text`, shortened to 40 code points.
std::string in_ticks(std::string_view text);

}  // namespace sealworthy::yaml
