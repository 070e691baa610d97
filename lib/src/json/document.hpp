#pragma once

/// JSON (RFC 8259) -> the same Document that YAML gives, so that cards and schema.org recipes are read alike.
/// The only room that parses JSON.

#include <sealworthy/position.hpp>
#include <string_view>

#include "yaml/document.hpp"

namespace sealworthy::json {

/// One JSON value with blanks around it; a byte order mark before it is let be. A string is a quoted scalar,
/// a number or `true` a plain one, `null` a null. Refuses, at its place: what is no JSON (comments and
/// trailing commas are named), invalid UTF-8, a key that stands twice in one object, nesting beyond
/// `limits.depth`, more than `limits.nodes` values, more than `limits.bytes`.
/// `start`: where the text begins in its file. Cost: one pass of nlohmann's SAX parser and one beside it for
/// the places. Never throws but for bad_alloc.
yaml::DocumentOrError read_document(std::string_view text, int number = 1, Position start = {1, 1},
                                    const yaml::Limits& limits = {});

}  // namespace sealworthy::json
