#include <cstring>
#include <limits>
#include <memory>
#include <sealworthy/stored.hpp>
#include <sealworthy/study.hpp>
#include <type_traits>

namespace sealworthy {
namespace {

class Writer {
 public:
  template <class... T>
  void all(const T&... values) {
    (one(values), ...);
  }
  void one(const std::string& text) {
    size(text.size());
    bytes_ += text;
  }
  template <class T>
  requires(std::is_arithmetic_v<T> || std::is_enum_v<T>) void one(const T& value) {
    bytes_.append(reinterpret_cast<const char*>(&value), sizeof value);
  }
  template <class T>
  void one(const std::vector<T>& list) {
    size(list.size());
    for (const auto& item : list) one(item);
  }
  template <class T>
  void one(const std::optional<T>& value) {
    one(value.has_value());
    if (value) one(*value);
  }
  template <class Tag, class Dimension>
  void one(const Quantity<Tag, Dimension>& value) {
    one(value.si());
  }
  void one(const std::shared_ptr<const Study>& study) {
    one(study != nullptr);
    if (study != nullptr) one(*study);
  }
  template <class T>
  requires(std::is_class_v<T>) void one(const T& value) { fields(*this, value); }
  void size(std::size_t n) { one(static_cast<std::uint32_t>(n)); }

  std::string bytes_;
};

class Reader {
 public:
  explicit Reader(std::string_view bytes) : rest_(bytes) {}

  template <class... T>
  void all(T&... values) {
    (one(values), ...);
  }
  void one(std::string& text) {
    const auto n = size();
    text.assign(rest_.substr(0, n));
    rest_.remove_prefix(n);
  }
  template <class T>
  requires(std::is_arithmetic_v<T> || std::is_enum_v<T>) void one(T& value) {
    if (rest_.size() < sizeof value) {
      fail();
      return;
    }
    if constexpr (std::is_same_v<T, bool>)
      value = rest_.front() != 0;
    else
      std::memcpy(&value, rest_.data(), sizeof value);
    rest_.remove_prefix(sizeof value);
  }
  template <class T>
  void one(std::vector<T>& list) {
    const auto n = size();  // an item takes a byte at least, so a damaged size can't ask for much
    list.reserve(n);
    for (std::size_t i = 0; i < n && good_; ++i) one(list.emplace_back());
  }
  template <class T>
  void one(std::optional<T>& value) {
    bool there = false;
    one(there);
    if (there) one(value.emplace());
  }
  template <class Tag, class Dimension>
  void one(Quantity<Tag, Dimension>& value) {
    double si = 0;
    one(si);
    value = Quantity<Tag, Dimension>::from_si(si);
  }
  void one(std::shared_ptr<const Study>& study) {
    bool there = false;
    one(there);
    if (!there) return;
    auto read = std::make_shared<Study>();
    one(*read);
    study = std::move(read);
  }
  template <class T>
  requires(std::is_class_v<T>) void one(T& value) { fields(*this, value); }
  [[nodiscard]] bool good() const { return good_ && rest_.empty(); }

 private:
  std::size_t size() {
    std::uint32_t n = 0;
    one(n);
    if (n <= rest_.size()) return n;
    fail();
    return 0;
  }
  void fail() {
    good_ = false;
    rest_ = {};
  }

  std::string_view rest_;
  bool good_ = true;
};

// The bindings take every member: one that is added later does not compile until it is stored too.
template <class Archive, class T>
requires(std::is_same_v<std::remove_const_t<T>, Finding>) void fields(Archive& archive, T& finding) {
  auto& [rule, severity, topic, at, message, why, instead, sources, found, needed, meaning, from_kitchen,
         because, until, known] = finding;
  archive.all(rule, severity, topic, at.line, at.column, message, why, instead, sources, found, needed,
              meaning, from_kitchen, because, until, known);
}

template <class Archive, class T>
requires(std::is_same_v<std::remove_const_t<T>, Point>) void fields(Archive& archive, T& point) {
  auto& [kind, state, found, needed] = point;
  archive.all(kind, state, found, needed);
}

template <class Archive, class T>
requires(std::is_same_v<std::remove_const_t<T>, Matched>) void fields(Archive& archive, T& matched) {
  auto& [id, title, source, by, holds_for, from_memory] = matched;
  archive.all(id, title, source, by, holds_for, from_memory);
}

template <class Archive, class T>
requires(std::is_same_v<std::remove_const_t<T>, TableStep>) void fields(Archive& archive, T& step) {
  auto& [from_ft, to_ft, minutes, psi] = step;
  archive.all(from_ft, to_ft, minutes, psi);
}

template <class Archive, class T>
requires(std::is_same_v<std::remove_const_t<T>, TableUse>) void fields(Archive& archive, T& use) {
  auto& [jar, method, minutes, psi, judged_at_ft, steps] = use;
  archive.all(jar, method, minutes, psi, judged_at_ft, steps);
}

template <class Archive, class T>
requires(std::is_same_v<std::remove_const_t<T>, Interval<double>>) void fields(Archive& archive,
                                                                               T& interval) {
  auto& [low, high] = interval;
  archive.all(low, high);
}

template <class Archive, class T>
requires(std::is_same_v<std::remove_const_t<T>, HeatEffect>) void fields(Archive& archive, T& effect) {
  auto& [method, time, pressure, around, at_most, thin, thick] = effect;
  archive.all(method, time, pressure, around, at_most, thin, thick);
}

template <class Archive, class T>
requires(std::is_same_v<std::remove_const_t<T>, HeatStudy>) void fields(Archive& archive, T& heat) {
  auto& [jar, low_acid, germ, reference, least, log_reductions, card, tested, source, from_memory] = heat;
  archive.all(jar, low_acid, germ, reference, least, log_reductions, card, tested, source, from_memory);
}

template <class Archive, class T>
requires(std::is_same_v<std::remove_const_t<T>, AltitudeStudy>) void fields(Archive& archive, T& place) {
  auto& [known, altitude, air, boiling] = place;
  archive.all(known, altitude, air, boiling);
}

template <class Archive, class T>
requires(std::is_same_v<std::remove_const_t<T>, AcidPart>) void fields(Archive& archive, T& part) {
  auto& [name, grams, own_ph, meq, by_default] = part;
  archive.all(name, grams, own_ph, meq, by_default);
}

template <class Archive, class T>
requires(std::is_same_v<std::remove_const_t<T>, AcidityStudy>) void fields(Archive& archive, T& acidity) {
  auto& [best, bound, strict, limit, parts, no_amount] = acidity;
  archive.all(best, bound, strict, limit, parts, no_amount);
}

template <class Archive, class T>
requires(std::is_same_v<std::remove_const_t<T>, Study>) void fields(Archive& archive, T& study) {
  auto& [altitude, heat, acidity, no_acidity] = study;
  archive.all(altitude, heat, acidity, no_acidity);
}

template <class Archive, class T>
requires(std::is_same_v<std::remove_const_t<T>, ComparedLine>) void fields(Archive& archive, T& line) {
  auto& [mark, card, published, note, percent, at] = line;
  archive.all(mark, card, published, note, percent, at.line, at.column);
}

template <class Archive, class T>
requires(std::is_same_v<std::remove_const_t<T>, Comparison>) void fields(Archive& archive, T& comparison) {
  auto& [id, title, factor, lines] = comparison;
  archive.all(id, title, factor, lines);
}

template <class Archive, class T>
requires(std::is_same_v<std::remove_const_t<T>, RecipeReport>) void fields(Archive& archive, T& report) {
  auto& [path, document, title, at, verdict, matched, findings, points, compared, kitchen, tables, study,
         assumed, lines, numbers] = report;
  archive.all(document, title, at.line, at.column, verdict, matched, findings, points, compared, kitchen,
              tables, study, assumed, lines, numbers);
}

template <class Enum>
bool up_to(Enum value, Enum last) {
  return static_cast<unsigned>(value) <= static_cast<unsigned>(last);  // a negative one is large then
}

/// Enumerators out of range would be read past the ends of tables of words.
bool in_range(const RecipeReport& report) {
  if (!up_to(report.verdict, Verdict::unreadable)) return false;
  for (const auto& finding : report.findings)
    if (!up_to(finding.severity, Severity::danger) || !up_to(finding.topic, Topic::card)) return false;
  for (const auto& point : report.points)
    if (!up_to(point.kind, PointKind::altitude) || !up_to(point.state, Point::State::differs)) return false;
  if (report.compared)
    for (const auto& line : report.compared->lines)
      if (!up_to(line.mark, ComparedLine::Mark::unknown)) return false;
  return report.source_lines.size() == report.source_line_numbers.size();
}

}  // namespace

std::string store(const std::vector<RecipeReport>& reports) {
  Writer writer;
  writer.one(reports);
  return std::move(writer.bytes_);
}

std::optional<std::vector<RecipeReport>> restore(std::string_view bytes, std::string_view path) {
  Reader reader(bytes);
  std::vector<RecipeReport> reports;
  reader.one(reports);
  if (!reader.good()) return std::nullopt;
  for (auto& report : reports) {
    if (!in_range(report)) return std::nullopt;
    report.path = path;
  }
  return reports;
}

}  // namespace sealworthy
