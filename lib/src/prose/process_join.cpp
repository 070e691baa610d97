#include <algorithm>

#include "prose/process.hpp"
#include "prose/process_words.hpp"

namespace sealworthy::prose {

using reading::MethodKind;

/// A figure without an altitude beside one of the same jar that is told for a height above: it is for the
/// heights below.
void ProcessReader::bound_open_ranges() {
  const auto same = [](const Draft& a, const Draft& b) {
    if (a.kind != b.kind || a.jars.size() != b.jars.size() || a.pack != b.pack) return false;
    if ((a.gauge && b.gauge && a.gauge->value != b.gauge->value)) return false;
    for (std::size_t i = 0; i < a.jars.size(); ++i)
      if (a.jars[i].value.volume != b.jars[i].value.volume) return false;
    return true;
  };
  for (Draft& open : drafts_) {
    if (open.altitude) continue;
    const Draft* lowest = nullptr;
    for (const Draft& other : drafts_)
      if (other.altitude && same(open, other) && other.altitude->value.low > feet(0) &&
          (lowest == nullptr || other.altitude->value.low < lowest->altitude->value.low))
        lowest = &other;
    if (lowest == nullptr) continue;
    auto range = *lowest->altitude;
    range.value = {feet(0), lowest->altitude->value.low};
    open.altitude = range;
  }
}

void ProcessReader::give_pressures() {
  const bool missing = std::any_of(drafts_.begin(), drafts_.end(),
                                   [](const Draft& d) { return !d.pressure && !water(d.kind); });
  if (pressures_.empty() || !missing) {
    // "Process at 10 pounds. Above 1,000 ft use 15 pounds."
    std::vector<Draft> more;
    for (const Draft& told : pressures_)
      for (const Draft& draft : drafts_)
        if (told.altitude && draft.pressure && !draft.altitude &&
            (!told.gauge || !draft.gauge || told.gauge->value == draft.gauge->value)) {
          Draft raised = draft;
          raised.pressure = told.pressure;
          raised.altitude = told.altitude;
          if (told.gauge) raised.gauge = told.gauge;
          more.push_back(std::move(raised));
        }
    drafts_.insert(drafts_.end(), more.begin(), more.end());
    return;
  }
  std::vector<Draft> out;
  for (const Draft& draft : drafts_) {
    if (draft.pressure || water(draft.kind) || draft.kind == MethodKind::not_accepted) {
      out.push_back(draft);
      continue;
    }
    for (const Draft& told : pressures_) {
      Draft one = draft;
      one.pressure = told.pressure;
      if (told.gauge) one.gauge = told.gauge;
      if (told.altitude && !one.altitude) one.altitude = told.altitude;
      out.push_back(std::move(one));
    }
  }
  drafts_ = std::move(out);
}

void ProcessReader::give_methods(const Sentence* title) {
  if (methods_.empty() && title != nullptr) {
    for (const Mark& mark : title->marks)
      if (mark.kind == Kind::method && mark.method.sure && !mark.denied)
        methods_.emplace_back(placed(*title, mark, title->words(mark.first, mark.last)),
                              mark.method.method->kind);
  }
  for (Draft& draft : drafts_) {
    if (draft.method || methods_.empty()) continue;
    const auto kind = methods_.front().second;
    const bool one =
        std::all_of(methods_.begin(), methods_.end(), [&](const auto& m) { return m.second == kind; });
    if (!one) {
      doubts_.push_back(
          {draft.at, draft.words, "the page names several methods, and this time none of them"});
      continue;
    }
    if (draft.pressure && water(kind)) continue;
    draft.method = methods_.front().first;
    draft.kind = kind;
  }
}

void ProcessReader::give_gauges() {
  if (gauges_.empty()) return;
  const auto first = gauges_.front();
  const bool one =
      std::all_of(gauges_.begin(), gauges_.end(), [&](const auto& g) { return g.value == first.value; });
  if (!one) return;
  for (Draft& draft : drafts_)
    if (!draft.gauge && !water(draft.kind) && draft.kind != MethodKind::not_accepted) draft.gauge = first;
}

std::vector<Draft> ProcessReader::finish(const Sentence* title) {
  give_methods(title);
  give_pressures();
  give_gauges();
  bound_open_ranges();
  return std::move(drafts_);
}

}  // namespace sealworthy::prose
