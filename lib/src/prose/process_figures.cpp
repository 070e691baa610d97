#include <algorithm>

#include "prose/process.hpp"
#include "prose/process_words.hpp"

namespace sealworthy::prose {

using reading::MethodKind;

namespace {

/// The parenthesis that a word stands in, counted from the left; 0: in none.
std::size_t parenthesis(const Sentence& s, std::size_t word) {
  std::size_t opened = 0;
  bool open = false;
  for (const char c : s.text.substr(s.begin, s.bytes[word].first - s.begin)) {
    if (c == '(') {
      ++opened;
      open = true;
    } else if (c == ')') {
      open = false;
    }
  }
  return open ? opened : 0;
}

}  // namespace

/// Gives each label to the figure beside it. What stands together in a parenthesis is told there:
/// "quarts 25 minutes (pints 20 minutes)".
std::vector<ProcessReader::Labelled> ProcessReader::label(const Sentence& s,
                                                          const std::vector<const Mark*>& figures,
                                                          const std::vector<const Mark*>& labels,
                                                          bool& left_over) {
  std::vector<std::size_t> inner;
  for (const Mark* figure : figures) {
    const std::size_t place = parenthesis(s, figure->first);
    const bool labelled = place != 0 && std::any_of(labels.begin(), labels.end(), [&](const Mark* l) {
                            return parenthesis(s, l->first) == place;
                          });
    if (labelled && (inner.empty() || inner.back() != place)) inner.push_back(place);
  }
  const auto within = [&](const std::vector<const Mark*>& marks, std::size_t place) {
    std::vector<const Mark*> out;
    for (const Mark* mark : marks) {
      const std::size_t own = parenthesis(s, mark->first);
      const bool apart = std::find(inner.begin(), inner.end(), own) != inner.end();
      if (place == 0 ? !apart : own == place) out.push_back(mark);
    }
    return out;
  };
  const auto outside = within(figures, 0);
  if (inner.empty() || outside.empty()) return label_in_one(s, figures, labels, left_over);
  std::vector<Labelled> out = label_in_one(s, outside, within(labels, 0), left_over);
  for (const std::size_t place : inner)
    for (Labelled& one : label_in_one(s, within(figures, place), within(labels, place), left_over))
      out.push_back(std::move(one));
  std::sort(out.begin(), out.end(),
            [](const Labelled& a, const Labelled& b) { return a.mark->first < b.mark->first; });
  return out;
}

std::vector<ProcessReader::Labelled> ProcessReader::label_in_one(const Sentence& s,
                                                                 const std::vector<const Mark*>& figures,
                                                                 const std::vector<const Mark*>& labels,
                                                                 bool& left_over) {
  std::vector<Labelled> out;
  out.reserve(figures.size());
  for (const Mark* figure : figures) out.push_back({figure, {}});
  if (out.empty() || labels.empty()) return out;
  if (out.size() == 1) {
    out.front().labels = labels;
    return out;
  }
  std::vector<const Mark*> open;
  bool behind = figures.front()->first < labels.front()->first;
  for (const Mark* label : labels) {
    // "15 minutes for pints", "20 (pints)", "11 pounds at 0-2,000 ft": said to belong together.
    Labelled* linked = nullptr;
    for (Labelled& figure : out) {
      const std::size_t gap = label->first - figure.mark->last;
      if (label->first < figure.mark->last || gap > 3) continue;
      const auto word = s.tokens[figure.mark->last].text;
      const bool joined = gap > 0 && (word == "for" || word == "at" || word == "in" || word == "with" ||
                                      word == "if" || word == "on");
      const bool bracket = s.tokens[label->first].before == '(' || s.tokens[figure.mark->last].before == '(';
      if ((joined && !parted(s, figure.mark->last, label->first)) || bracket) linked = &figure;
    }
    if (linked == nullptr) {
      open.push_back(label);
    } else {
      linked->labels.push_back(label);
      behind = true;
    }
  }
  for (const Mark* label : open) {
    Labelled* to = nullptr;
    for (Labelled& figure : out) {
      if (behind && figure.mark->first < label->first) to = &figure;
      if (!behind && to == nullptr && figure.mark->first > label->first) to = &figure;
    }
    if (to == nullptr && !behind && out.back().labels.empty()) to = &out.back();
    if (to == nullptr) {
      left_over = true;
    } else {
      to->labels.push_back(label);
    }
  }
  return out;
}

/// The only gauge that a sentence names, before its pressures or with several of them told by altitude, is
/// the gauge of each.
void ProcessReader::one_gauge_for_all(std::vector<Labelled>& pressures,
                                      const std::vector<const Mark*>& gauges) {
  const bool one = !gauges.empty() && std::all_of(gauges.begin(), gauges.end(), [&](const Mark* g) {
    return g->gauge == gauges.front()->gauge;
  });
  if (!one || pressures.empty()) return;
  for (Labelled& pressure : pressures)
    if (pressure.labels.empty() && gauges.front()->first < pressure.mark->first)
      pressure.labels = {gauges.front()};
}

void ProcessReader::draft(const Sentence& s, const Segment& segment,
                          const std::vector<const Mark*>& all_times, const Mark* added) {
  std::vector<const Mark*> times, pressures, jars, altitudes, gauges, packs;
  // What stands behind "add 5 minutes" is told of the time to add.
  const std::size_t increases = added == nullptr ? s.tokens.size() : added->first;
  for (const Mark* mark : segment.marks) {
    if (std::find(all_times.begin(), all_times.end(), mark) != all_times.end()) times.push_back(mark);
    if (mark->kind == Kind::pressure && !s.denied(mark->first)) pressures.push_back(mark);
    if (mark->kind == Kind::jar && !s.denied(mark->first)) jars.push_back(mark);
    if (mark->kind == Kind::altitude && !mark->step && mark->first < increases) altitudes.push_back(mark);
    if (mark->kind == Kind::gauge && !s.denied(mark->first)) gauges.push_back(mark);
    if (mark->kind == Kind::pack) packs.push_back(mark);
    if (mark->kind == Kind::altitude && mark->step)
      doubt(s, "it asks to work the figures out for each step of altitude");
  }
  if (times.empty()) return;
  const std::size_t before = drafts_.size();
  bool left_over = false;
  std::vector<Labelled> jar_labels = label(s, times, jars, left_over);
  // Times that have their jars, and behind them pressures that have their altitudes: each for each.
  const bool lists =
      pressures.size() > 1 && pressures.front()->first > times.back()->last && !altitudes.empty() &&
      altitudes.size() + 1 >= pressures.size() && altitudes.front()->first > pressures.front()->first &&
      std::all_of(jar_labels.begin(), jar_labels.end(), [](const Labelled& l) { return !l.labels.empty(); });
  const bool by_altitude = pressures.size() > 1 && (times.size() == 1 || lists);
  const std::vector<Labelled> pack_labels = label(s, times, packs, left_over);
  std::vector<Labelled> time_heights =
      label(s, times, by_altitude ? std::vector<const Mark*>() : altitudes, left_over);
  const std::vector<Labelled> press_heights =
      label(s, pressures, by_altitude ? altitudes : std::vector<const Mark*>(), left_over);
  std::vector<Labelled> press_gauges = label(s, pressures, gauges, left_over);
  one_gauge_for_all(press_gauges, gauges);
  // One altitude beside times that have their jars is for all of them.
  const bool one_height =
      !by_altitude && altitudes.size() == 1 && times.size() > 1 &&
      std::all_of(jar_labels.begin(), jar_labels.end(), [](const Labelled& l) { return !l.labels.empty(); });
  if (one_height)
    for (Labelled& time : time_heights) time.labels = altitudes;
  // "Process pints 10 minutes at 0-1,000 ft, 15 minutes above": a time without a jar of its own at another
  // altitude is for the jars of the one before.
  for (std::size_t i = 1; i < times.size(); ++i)
    if (jar_labels[i].labels.empty() && !time_heights[i].labels.empty())
      jar_labels[i].labels = jar_labels[i - 1].labels;
  const bool some =
      std::any_of(jar_labels.begin(), jar_labels.end(), [](const Labelled& l) { return !l.labels.empty(); });
  const bool every =
      std::all_of(jar_labels.begin(), jar_labels.end(), [](const Labelled& l) { return !l.labels.empty(); });
  if (left_over || (some && !every)) doubt(s, "which figure is for which jar is not clear");
  if (pressures.size() > 1 && times.size() > 1 && !altitudes.empty() && !lists)
    doubt(s, "which figure is for which altitude is not clear");

  const auto height_of = [&](Draft& draft, const Labelled& labelled) {
    if (labelled.labels.empty()) return;
    if (labelled.labels.size() > 1) return doubt(s, "a figure stands beside several altitudes");
    draft.altitude = placed(s, *labelled.labels.front(), feet_of(labelled.labels.front()->feet));
  };
  for (std::size_t t = 0; t < times.size(); ++t) {
    Draft base;
    base.at = s.at(times[t]->first);
    base.words = s.all_words();
    base.time = placed(s, *times[t], minutes_of(times[t]->figure));
    for (const Mark* jar : jar_labels[t].labels) base.jars.push_back(placed(s, *jar, jar->jar));
    if (pack_labels[t].labels.size() == 1) base.pack = pack_labels[t].labels.front()->pack;
    height_of(base, time_heights[t]);
    if (pressures.empty() && !gauges.empty() && std::all_of(gauges.begin(), gauges.end(), [&](const Mark* g) {
          return g->gauge == gauges.front()->gauge;
        }))
      base.gauge = placed(s, *gauges.front(), gauges.front()->gauge);
    if (pressures.empty()) drafts_.push_back(base);
    for (std::size_t p = 0; p < pressures.size(); ++p) {
      Draft one = base;
      one.pressure = placed(
          s, *pressures[p],
          Interval<GaugePressure>{psi_gauge(pressures[p]->figure.low), psi_gauge(pressures[p]->figure.high)});
      if (press_gauges[p].labels.size() == 1)
        one.gauge = placed(s, *press_gauges[p].labels.front(), press_gauges[p].labels.front()->gauge);
      height_of(one, press_heights[p]);
      drafts_.push_back(one);
    }
  }
  // Each method that the segment names without a figure between: "in a boiling-water or steam canner".
  std::vector<Draft> without(drafts_.begin() + static_cast<std::ptrdiff_t>(before), drafts_.end());
  if (segment.methods.empty()) return;
  drafts_.resize(before);
  std::vector<MethodKind> seen;
  for (const Mark* method : segment.methods) {
    const MethodKind kind = method->method.method->kind;
    if (std::find(seen.begin(), seen.end(), kind) != seen.end()) continue;
    seen.push_back(kind);
    for (Draft one : without) {
      if (one.pressure && water(kind)) one.pressure.reset();
      // One that the words do not name (boiling jars in a tub) goes by its usual name.
      const std::string_view named = method->method.words == 0 ? method->method.method->names.front()
                                                               : s.words(method->first, method->last);
      one.method = placed(s, *method, named);
      one.kind = kind;
      drafts_.push_back(std::move(one));
    }
  }
}

/// "Add 5 minutes above 1,000 ft", "plus 5 minutes for quarts".
void ProcessReader::increase(const Sentence& s, const std::vector<const Mark*>& more) {
  std::vector<const Mark*> heights;
  for (const Mark& mark : s.marks) {
    if (mark.kind == Kind::altitude && mark.step)
      return doubt(s, "it asks to add time for each step of altitude");
    const bool before_it = mark.first < more.front()->first && !drafts_.empty() &&
                           drafts_.back().words.data() == s.all_words().data();
    if (mark.kind == Kind::altitude && !before_it) heights.push_back(&mark);
  }
  bool left_over = false;
  const std::vector<Labelled> labelled = label(s, more, heights, left_over);
  const bool each =
      std::all_of(labelled.begin(), labelled.end(), [](const Labelled& l) { return l.labels.size() == 1; });
  const bool by_jar = std::any_of(s.marks.begin(), s.marks.end(), [&](const Mark& m) {
    return m.kind == Kind::jar && m.first > more.front()->first;
  });
  if (left_over || !each || by_jar) return doubt(s, "how much time to add where is not clear");
  const std::vector<Draft> bases = drafts_;
  for (const Labelled& one : labelled) {
    for (const Draft& base : bases) {
      if (base.altitude || !base.time) continue;
      Draft raised = base;
      raised.at = s.at(one.mark->first);
      raised.time->value = base.time->value + minutes_of(one.mark->figure);
      raised.altitude = placed(s, *one.labels.front(), feet_of(one.labels.front()->feet));
      drafts_.push_back(std::move(raised));
    }
  }
}

/// A pressure that no time stands with: "Bring the canner to 10 pounds."
void ProcessReader::pressures_alone(const Sentence& s) {
  std::vector<const Mark*> pressures, altitudes, gauges;
  for (const Mark& mark : s.marks) {
    if (mark.kind == Kind::pressure && !s.denied(mark.first)) pressures.push_back(&mark);
    if (mark.kind == Kind::altitude) altitudes.push_back(&mark);
    if (mark.kind == Kind::gauge) gauges.push_back(&mark);
  }
  if (pressures.empty()) return;
  if (std::any_of(altitudes.begin(), altitudes.end(), [](const Mark* m) { return m->step; }) ||
      std::any_of(s.marks.begin(), s.marks.end(), [](const Mark& m) { return m.kind == Kind::increase; }))
    return doubt(s, "it asks to work the pressure out");
  bool left_over = false;
  const auto heights = label(s, pressures, altitudes, left_over);
  auto kinds = label(s, pressures, gauges, left_over);
  one_gauge_for_all(kinds, gauges);
  if (left_over) doubt(s, "which pressure is meant where is not clear");
  for (std::size_t i = 0; i < pressures.size(); ++i) {
    Draft one;
    one.at = s.at(pressures[i]->first);
    one.words = s.all_words();
    one.pressure = placed(
        s, *pressures[i],
        Interval<GaugePressure>{psi_gauge(pressures[i]->figure.low), psi_gauge(pressures[i]->figure.high)});
    if (heights[i].labels.size() == 1)
      one.altitude = placed(s, *heights[i].labels.front(), feet_of(heights[i].labels.front()->feet));
    if (kinds[i].labels.size() == 1)
      one.gauge = placed(s, *kinds[i].labels.front(), kinds[i].labels.front()->gauge);
    pressures_.push_back(std::move(one));
  }
}

}  // namespace sealworthy::prose
