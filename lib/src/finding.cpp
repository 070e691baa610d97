#include <array>
#include <sealworthy/finding.hpp>

namespace sealworthy {

std::string_view to_string(Severity s) noexcept {
  static constexpr std::array<std::string_view, 4> words{"notice", "caution", "warning", "danger"};
  return words[static_cast<std::size_t>(s)];
}

std::string_view to_string(Topic t) noexcept {
  static constexpr std::array<std::string_view, 14> words{
      "method", "acid",       "altitude", "time",     "pressure",  "headspace", "jar",
      "pack",   "ingredient", "change",   "practice", "equipment", "storage",   "card"};
  return words[static_cast<std::size_t>(t)];
}

std::string_view to_string(Verdict v) noexcept {
  static constexpr std::array<std::string_view, 4> words{"tested", "unproven", "hazard", "unreadable"};
  return words[static_cast<std::size_t>(v)];
}

std::string_view to_string(Read r) noexcept {
  static constexpr std::array<std::string_view, 3> words{"original", "reprint", "memory"};
  return words[static_cast<std::size_t>(r)];
}

std::string_view to_string(PointKind p) noexcept {
  static constexpr std::array<std::string_view, 12> words{"food",  "form",     "acid",      "amounts",
                                                          "pack",  "jar",      "headspace", "method",
                                                          "gauge", "pressure", "time",      "altitude"};
  return words[static_cast<std::size_t>(p)];
}

std::string_view to_string(ComparedLine::Mark mark) noexcept {
  static constexpr std::array<std::string_view, 8> words{"same", "free",    "allowed", "more",
                                                         "less", "missing", "added",   "unknown"};
  return words[static_cast<std::size_t>(mark)];
}

std::string_view to_string(Point::State s) noexcept {
  static constexpr std::array<std::string_view, 4> words{"held", "assumed", "unknown", "differs"};
  return words[static_cast<std::size_t>(s)];
}

}  // namespace sealworthy
