#pragma once

/// The files of lib/src/report/page/ as the build packs them (lib/cmake/EmbedText.cmake).

#include <string_view>

namespace sealworthy::report::page {

extern const std::string_view check_html;
extern const std::string_view check_js;
extern const std::string_view sheet_html;
extern const std::string_view style_css;
extern const std::string_view sheet_css;

}  // namespace sealworthy::report::page
