#include <algorithm>
#include <cmath>

#include "prose/process.hpp"
#include "prose/process_words.hpp"

namespace sealworthy::prose {

using reading::MethodKind;

namespace {

/// Where the step of altitudes below one that begins at `low` ends. Steps that print both ends leave a unit
/// between them: what is below "1,001 to 3,000 ft" ends at 1,000 ft, below "above 1,000 ft" too.
Altitude end_of_step_below(const Interval<Altitude>& above) {
  constexpr double round_figure = 10;
  const double low = in_feet(above.low);
  const bool whole = std::abs(low - std::round(low)) < 1e-6;
  const bool one_past = whole && std::abs(std::fmod(std::round(low), round_figure) - 1) < 1e-6;
  if (one_past) return feet(std::round(low) - 1);
  // In metres, which seldom are whole feet.
  if (!whole && !std::isinf(above.high.si())) return above.low - metres(1);
  return above.low;
}

}  // namespace

/// A figure without an altitude beside one of the same jar that is told for a height above: it is for the
/// heights below. So is each step of "above 1,000 feet add 5 minutes, above 3,000 feet add 10".
void ProcessReader::bound_open_ranges() {
  const auto same = [](const Draft& a, const Draft& b) {
    if (a.kind != b.kind || a.jars.size() != b.jars.size() || a.pack != b.pack) return false;
    if ((a.gauge && b.gauge && a.gauge->value != b.gauge->value)) return false;
    for (std::size_t i = 0; i < a.jars.size(); ++i)
      if (a.jars[i].value.volume != b.jars[i].value.volume) return false;
    return true;
  };
  const auto same_figures = [](const Draft& a, const Draft& b) {
    return same_value(a.time, b.time) && same_value(a.pressure, b.pressure);
  };
  for (Draft& open : drafts_) {
    if (!open.altitude || !std::isinf(open.altitude->value.high.si())) continue;
    for (const Draft& other : drafts_) {
      if (!other.altitude || !same(open, other) || same_figures(open, other)) continue;
      if (other.altitude->value.low > open.altitude->value.low &&
          end_of_step_below(other.altitude->value) < open.altitude->value.high)
        open.altitude->value.high = end_of_step_below(other.altitude->value);
    }
  }
  for (Draft& open : drafts_) {
    if (open.altitude) continue;
    const Draft* lowest = nullptr;
    for (const Draft& other : drafts_)
      if (other.altitude && same(open, other) && other.altitude->value.low > feet(0) &&
          (lowest == nullptr || other.altitude->value.low < lowest->altitude->value.low))
        lowest = &other;
    if (lowest == nullptr) continue;
    auto range = *lowest->altitude;
    range.value = {feet(0), end_of_step_below(lowest->altitude->value)};
    open.altitude = range;
  }
}

/// Told for heights above those of a process, which no other process is for.
bool ProcessReader::lies_above(const Draft& told, const Draft& draft) const {
  if (told.altitude->value.low < draft.altitude->value.high) return false;
  return std::none_of(drafts_.begin(), drafts_.end(), [&](const Draft& other) {
    return other.altitude && other.altitude->value.high > told.altitude->value.low;
  });
}

/// A sentence of figures that goes on from the one before, "; pints need 60 minutes", has its method and its
/// pressure, and its altitude where there is one only. `first`: of its drafts.
void ProcessReader::go_on(std::size_t first) {
  if (first == 0 || first == drafts_.size()) return;
  const auto* words = drafts_[first - 1].words.data();
  std::vector<Draft> before;
  for (std::size_t i = 0; i < first; ++i)
    if (drafts_[i].words.data() == words) before.push_back(drafts_[i]);
  const auto alike = [](const Draft& a, const Draft& b) {
    return a.kind == b.kind && same_value(a.pressure, b.pressure) && same_value(a.gauge, b.gauge) &&
           same_value(a.altitude, b.altitude);
  };
  const bool one =
      std::all_of(before.begin(), before.end(), [&](const Draft& d) { return alike(d, before.front()); });
  if (!one) return;
  const Draft& model = before.front();
  for (std::size_t i = first; i < drafts_.size(); ++i) {
    Draft& draft = drafts_[i];
    if (!draft.method && !(draft.pressure && water(model.kind))) {
      draft.method = model.method;
      draft.kind = model.kind;
    }
    if (!draft.pressure && draft.kind == model.kind) {
      draft.pressure = model.pressure;
      if (!draft.gauge) draft.gauge = model.gauge;
    }
    // Its own altitude would be another than that of the sentence before.
    if (!draft.altitude && first + 1 == drafts_.size()) draft.altitude = model.altitude;
  }
}

/// "If you have a weighted-gauge canner use 10 pounds": where the process was told for the other gauge.
std::vector<Draft> ProcessReader::for_the_other_gauge() const {
  std::vector<Draft> out;
  for (const Draft& told : pressures_) {
    if (!told.gauge) continue;
    const bool known = std::any_of(drafts_.begin(), drafts_.end(), [&](const Draft& d) {
      return d.pressure && (!d.gauge || d.gauge->value == told.gauge->value);
    });
    if (known) continue;
    for (const Draft& draft : drafts_) {
      if (!draft.pressure) continue;
      Draft one = draft;
      one.pressure = told.pressure;
      one.gauge = told.gauge;
      one.altitude = told.altitude;
      out.push_back(std::move(one));
    }
  }
  return out;
}

void ProcessReader::give_pressures() {
  const bool missing = std::any_of(drafts_.begin(), drafts_.end(),
                                   [](const Draft& d) { return !d.pressure && !water(d.kind); });
  if (pressures_.empty() || !missing) {
    // "Process at 10 pounds. Above 1,000 ft use 15 pounds."
    std::vector<Draft> more;
    for (const Draft& told : pressures_)
      for (const Draft& draft : drafts_)
        if (told.altitude && draft.pressure && (!draft.altitude || lies_above(told, draft)) &&
            (!told.gauge || !draft.gauge || told.gauge->value == draft.gauge->value)) {
          Draft raised = draft;
          raised.pressure = told.pressure;
          raised.altitude = told.altitude;
          if (told.gauge) raised.gauge = told.gauge;
          more.push_back(std::move(raised));
        }
    const auto others = for_the_other_gauge();
    drafts_.insert(drafts_.end(), more.begin(), more.end());
    drafts_.insert(drafts_.end(), others.begin(), others.end());
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
