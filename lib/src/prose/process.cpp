#include "prose/process.hpp"

#include <algorithm>

#include "prose/process_words.hpp"

namespace sealworthy::prose {

void ProcessReader::doubt(const Sentence& s, std::string reason) {
  for (const recipe::Doubt& known : doubts_)
    if (known.text.data() == s.all_words().data()) return;
  doubts_.push_back({s.at(0), s.all_words(), std::move(reason)});
}

/// "Put on the lids, set the jars in a tub, cover with water and boil 3 hours": a boiling-water bath,
/// whatever it is done in. Not the jar that is opened and boiled before it is eaten.
bool ProcessReader::closed_in_water(const Sentence& s, const Mark& verb) const {
  bool jars = false, filled = false, closed = closed_, water = false, eaten = false;
  for (std::size_t i = 0; i < s.tokens.size(); ++i) {
    const Senses& meant = s.senses[i];
    const bool before = i < verb.first || i <= verb.last + 2;
    jars = jars || (before && one_of(s.tokens[i].text, {"jars", "pints", "quarts", "them"}));
    filled = filled || (before && meant.has(Sense::fill));
    closed = closed || (before && filled && meant.has(Sense::closed)) || meant.has(Sense::filled_jars);
    water = water || (meant.has(Sense::in_water) && !s.denied(i));
    eaten = eaten || one_of(s.tokens[i].text, {"eat", "eating", "taste", "tasting", "serve", "serving",
                                               "open", "opening", "opened"});
  }
  return jars && closed && water && !eaten;
}

/// "Simmer the jars 25 minutes", "keep them in hot water": no boiling-water process, whatever they stand in.
bool ProcessReader::below_the_boil(const Sentence& s, const Mark& time) const {
  const Mark* verb = owner(s, time);
  if (verb == nullptr || verb->kind != Kind::work || s.has(Kind::pressure)) return false;
  const auto heat = s.tokens[verb->first].text;
  if (one_of(heat, {"simmer", "simmering"})) return true;
  const bool boils = std::any_of(s.tokens.begin(), s.tokens.end(), [](const phrases::Token& token) {
    return one_of(token.text, {"boil", "boils", "boiling"});
  });
  const bool sure = std::any_of(s.marks.begin(), s.marks.end(),
                                [](const Mark& m) { return m.kind == Kind::method && m.method.sure; });
  return !boils && !sure;
}

/// "Boil the jars 15 minutes in a water-bath canner": heat that is the process, since filled jars stand in
/// it.
bool ProcessReader::jars_stand_in_it(const Sentence& s, const Mark& verb) const {
  if (s.has(Sense::empty_jars) || s.has(Kind::process)) return false;
  const bool them = std::any_of(s.tokens.begin(), s.tokens.end(),
                                [](const phrases::Token& token) { return token.text == "them"; });
  const bool sure = std::any_of(s.marks.begin(), s.marks.end(),
                                [](const Mark& m) { return m.kind == Kind::method && m.method.sure; });
  const bool of_jars = s.has(Sense::jar) || s.has(Kind::jar) || them;
  if (sure) return of_jars || s.tokens[verb.first].text == "boil";
  if (closed_in_water(s, verb)) return true;
  // Without a canner the jars must be what is heated: "boil the jars", not "simmer the carrots, fill the
  // jars".
  for (std::size_t i = verb.last; i < verb.last + 4 && i < s.tokens.size(); ++i) {
    if (s.senses[i].has(Sense::filled_jars)) return true;
    if (s.senses[i].has(Sense::jar)) return closed_;
  }
  return false;
}

/// "Leave 1/2 inch and water bath for 10 minutes": the method is what is done, not where.
bool ProcessReader::done_by(const Sentence& s, const Mark& method, const Mark& time) {
  const std::size_t gap = time.first - method.last;
  const bool next = gap == 0 || (gap == 1 && s.tokens[method.last].text == "for");
  const auto lead = method.first == 0 ? std::string_view() : s.tokens[method.first - 1].text;
  const bool place =
      one_of(lead, {"in", "a", "an", "the", "by", "with", "using", "your", "hot", "into", "or"});
  return next && (!place || s.tokens[method.first].before != 0);
}

/// "40 minutes in a boiling-water bath", without a verb.
bool ProcessReader::stands_in(const Sentence& s, const Mark& time, const Mark& method) {
  if (method.first < time.last || method.first - time.last > 3) return false;
  const auto lead = s.tokens[time.last].text;
  return one_of(lead, {"in", "by", "using"}) && !parted(s, time.last, method.first);
}

/// The verb or the method that a time belongs to.
const Mark* ProcessReader::owner(const Sentence& s, const Mark& time) const {
  const Mark* before = nullptr;
  const Mark* method = nullptr;
  const Mark* after = nullptr;
  const Mark* behind = nullptr;
  for (const Mark& mark : s.marks) {
    const bool verb = mark.kind == Kind::process || mark.kind == Kind::work || mark.kind == Kind::increase;
    if (verb && mark.first < time.first) before = &mark;
    if (verb && after == nullptr && mark.first > time.first) after = &mark;
    if (mark.kind == Kind::method && mark.method.sure && mark.first < time.first) method = &mark;
    if (mark.kind == Kind::method && mark.method.sure && stands_in(s, time, mark)) behind = &mark;
  }
  if (method != nullptr && before != nullptr && before->kind == Kind::work && before->first < method->first &&
      done_by(s, *method, time))
    return method;
  if (before == nullptr && behind != nullptr) return behind;
  // A method without a verb before it owns the time itself: "Water bath: 15 minutes".
  if (before == nullptr && method != nullptr) return method;
  return before != nullptr ? before : after;
}

bool ProcessReader::is_process(const Sentence& s, const Mark& time) const {
  if (denied(s, time.first)) return false;
  const Mark* verb = owner(s, time);
  if (verb == nullptr) {
    const bool labelled =
        s.has(Kind::jar) || s.has(Kind::altitude) || s.has(Kind::pressure) || s.has(Kind::pack);
    // "75 minutes at 10 pounds", where jars were spoken of
    return (last_process_ && labelled) || (jars_ && s.has(Kind::pressure));
  }
  if (s.denied(verb->first)) return false;
  switch (verb->kind) {
    case Kind::process:
      return true;
    case Kind::method:
      return !s.has(Sense::empty_jars);
    case Kind::work:
      return verb->heats_jars && jars_stand_in_it(s, *verb);
    default:
      return false;
  }
}

/// "20 minutes at 0-1,000 ft, 25 at 1,001-3,000 ft, 30 above": a bare figure beside a height, where the
/// figure before it is a time of the process.
bool ProcessReader::another_time(const Sentence& s, std::size_t number,
                                 const std::vector<const Mark*>& times) {
  const Mark& mark = s.marks[number];
  if (times.empty() || number + 1 == s.marks.size()) return false;
  const Mark& height = s.marks[number + 1];
  if (height.kind != Kind::altitude || height.step || height.first - mark.last > 2) return false;
  for (std::size_t i = number; i-- > 0;)
    if (s.marks[i].kind == Kind::time || s.marks[i].kind == Kind::pressure || s.marks[i].kind == Kind::number)
      return &s.marks[i] == times.back();
  return false;
}

/// The times of a sentence that are the process's. A bare figure beside a jar size is one where a time stands
/// in the sentence too: "process pints 20 and quarts 25 minutes". `loose`: times to be added to others.
std::vector<const Mark*> ProcessReader::own_times(const Sentence& s, std::vector<Mark>& loose) {
  std::vector<const Mark*> times;
  const bool high = s.has(Kind::altitude);
  for (std::size_t i = 0; i < s.marks.size(); ++i) {
    const Mark& mark = s.marks[i];
    if (mark.kind == Kind::time) {
      const bool to = mark.first > 0 && s.tokens[mark.first - 1].text == "to";
      const auto* more = std::find_if(s.marks.data(), s.marks.data() + i,
                                      [](const Mark& m) { return m.kind == Kind::increase; });
      const bool increased = more != s.marks.data() + i && !to && (high || s.has(Sense::altitude)) &&
                             (times.empty() || more->first > times.back()->first);
      if (increased) {
        if (!s.denied(more->first)) loose.push_back(mark);
      } else if (is_process(s, mark)) {
        const bool again = std::any_of(times.begin(), times.end(), [&](const Mark* t) {
          return t->figure == mark.figure && s.tokens[mark.first].before == '(';
        });
        if (!again) times.push_back(&mark);
      }
    } else if (mark.kind == Kind::number) {
      const bool beside_jar = (i > 0 && s.marks[i - 1].kind == Kind::jar) ||
                              (i + 1 < s.marks.size() && s.marks[i + 1].kind == Kind::jar);
      const bool unit_later = std::any_of(
          s.tokens.begin() + static_cast<std::ptrdiff_t>(mark.last), s.tokens.end(),
          [](const phrases::Token& token) { return token.text == "minutes" || token.text == "min"; });
      const Mark* verb = owner(s, mark);
      const bool owned = verb != nullptr && verb->kind == Kind::process && !s.denied(verb->first);
      if (another_time(s, i, times)) times.push_back(&mark);
      if (beside_jar && (unit_later || !times.empty()) && (owned || last_process_)) times.push_back(&mark);
    }
  }
  return times;
}

std::vector<ProcessReader::Segment> ProcessReader::segments(const Sentence& s,
                                                            const std::vector<const Mark*>& times) const {
  const bool sure = std::any_of(s.marks.begin(), s.marks.end(),
                                [](const Mark& m) { return m.kind == Kind::method && m.method.sure; });
  const bool pressure = s.has(Kind::pressure);
  std::vector<const Mark*> methods;
  for (const Mark& mark : s.marks) {
    if (mark.kind != Kind::method || denied(s, mark.first)) {
      // "If using a pressure canner, ..." names the method all the same.
      if (mark.kind != Kind::method || s.denied(mark.first)) continue;
    }
    if (!mark.method.sure &&
        (sure || (pressure && mark.method.method->kind != reading::MethodKind::pressure)))
      continue;
    methods.push_back(&mark);
  }
  std::vector<Segment> out(1);
  const auto kind = [](const Mark* m) { return m->method.method->kind; };
  const bool several = std::any_of(methods.begin(), methods.end(),
                                   [&](const Mark* m) { return kind(m) != kind(methods.front()); });
  if (!several) {
    out.front().methods = methods;
    for (const Mark& mark : s.marks) out.front().marks.push_back(&mark);
    return out;
  }
  const bool method_first = times.empty() || methods.front()->first < times.front()->first;
  const auto figure_between = [&](const Mark* a, const Mark* b) {
    return std::any_of(times.begin(), times.end(),
                       [&](const Mark* t) { return a->first < t->first && t->first < b->first; });
  };
  // Where each segment ends: before a method that comes first, or behind one that comes last.
  std::vector<std::size_t> ends;
  out.front().methods.push_back(methods.front());
  for (std::size_t i = 1; i < methods.size(); ++i) {
    if (figure_between(methods[i - 1], methods[i])) {
      ends.push_back(method_first ? methods[i]->first : methods[i - 1]->last);
      out.emplace_back();
    }
    out.back().methods.push_back(methods[i]);
  }
  std::size_t segment = 0;
  for (const Mark& mark : s.marks) {
    while (segment < ends.size() && mark.first >= ends[segment]) ++segment;
    out[segment].marks.push_back(&mark);
  }
  // "Quarts: 40 minutes in a boiling-water bath or 15 minutes in a pressure canner": told before any time,
  // the jars are for each way.
  const auto is_jar = [](const Mark* m) { return m->kind == Kind::jar; };
  std::vector<const Mark*> jars;
  for (const Mark* mark : out.front().marks)
    if (is_jar(mark)) jars.push_back(mark);
  const bool all_before = !times.empty() && !jars.empty() && jars.back()->first < times.front()->first;
  for (std::size_t i = 1; all_before && i < out.size(); ++i)
    if (std::none_of(out[i].marks.begin(), out[i].marks.end(), is_jar))
      out[i].marks.insert(out[i].marks.begin(), jars.begin(), jars.end());
  return out;
}

/// Boiling closed jars without the name of a canner is the method all the same.
void ProcessReader::name_water_bath(const Sentence& s, const std::vector<const Mark*>& times,
                                    std::vector<Segment>& parts) {
  if (vocabulary_.boiling_water() == nullptr || parts.size() != 1 || !parts.front().methods.empty()) return;
  const Mark* verb = owner(s, *times.front());
  if (verb == nullptr || verb->kind != Kind::work || !closed_in_water(s, *verb)) return;
  Mark method = *verb;
  method.kind = Kind::method;
  method.method = {vocabulary_.boiling_water(), 0, true};
  parts.front().methods.push_back(&made_.emplace_back(method));
}

void ProcessReader::note_context(const Sentence& s) {
  jars_ = jars_ || s.has(Sense::jar) || s.has(Kind::jar);
  for (std::size_t i = 0; i < s.tokens.size(); ++i) {
    if (s.denied(i)) continue;
    if (s.senses[i].has(Sense::fill) && s.has(Sense::jar)) filled_ = true;
    if (filled_ && s.senses[i].has(Sense::closed)) closed_ = true;
  }
  for (const Mark& mark : s.marks) {
    if (mark.denied) continue;
    if (mark.kind == Kind::method && mark.method.sure)
      methods_.emplace_back(placed(s, mark, s.words(mark.first, mark.last)), mark.method.method->kind);
    if (mark.kind == Kind::gauge) gauges_.push_back(placed(s, mark, mark.gauge));
  }
}

/// True if words that take something back stand in one clause with the figure.
bool ProcessReader::taken_back(const Sentence& s, const Mark& figure) {
  for (std::size_t i = 0; i < s.tokens.size(); ++i) {
    if (!s.senses[i].has(Sense::taken_back)) continue;
    if (!parted(s, std::min(i, figure.first) + 1, std::max(i, figure.first))) return true;
  }
  return false;
}

/// What a sentence tells that is not to be followed is no process; where it may be meant all the same it is a
/// doubt, so that a second way told on the page never goes unseen.
bool ProcessReader::set_aside(const Sentence& s, const Sentence* next) {
  const bool next_takes_back = next != nullptr && next->has(Sense::taken_back) && next->tokens.size() < 10 &&
                               (next->tokens.front().grammar & phrases::points_back) != 0;
  if (s.question || next_takes_back) return true;
  const bool aside = s.has(Sense::aside);
  if (!aside && !s.has(Sense::taken_back)) return false;
  std::vector<Mark> loose;
  const auto times = own_times(s, loose);
  const bool told =
      (s.has(Kind::time) || s.has(Kind::pressure)) && (s.has(Kind::process) || s.has(Kind::method));
  const bool meant = !loose.empty() || (aside && told) ||
                     std::any_of(times.begin(), times.end(),
                                 [&](const Mark* time) { return aside || !taken_back(s, *time); });
  if (meant) doubt(s, "it tells of a process and may take it back");
  return true;
}

/// "Never shorten the time" does not; "no harm in cutting the time", "why not cut the time" may.
bool ProcessReader::shortens(const Sentence& s) {
  const auto forbidden = [&](std::size_t i) {
    return i > 0 && s.denied(i) && one_of(s.tokens[i - 1].text, {"not", "never", "don't"}) &&
           (i == 1 || !one_of(s.tokens[i - 2].text, {"why", "or", "if"}));
  };
  for (std::size_t i = 0; i < s.tokens.size(); ++i)
    if (s.senses[i].has(Sense::shorten) && !forbidden(i)) return true;
  return false;
}

void ProcessReader::read(const Sentence& s, const Sentence* next) {
  if (set_aside(s, next)) return;
  if (shortens(s)) doubt(s, "it shortens a time");
  std::vector<Mark> loose;
  const auto times = own_times(s, loose);
  if (s.overfull && (!times.empty() || !loose.empty())) doubt(s, "it holds more figures than are read");
  const std::size_t before = drafts_.size();
  if (times.empty()) {
    pressures_alone(s);
  } else {
    if (below_the_boil(s, *times.front())) doubt(s, "it does not say that the water boils");
    auto parts = segments(s, times);
    name_water_bath(s, times, parts);
    for (const Segment& segment : parts) draft(s, segment, times, loose.empty() ? nullptr : &loose.front());
  }
  if (!loose.empty()) {
    std::vector<const Mark*> more;
    more.reserve(loose.size());
    for (const Mark& mark : loose) more.push_back(&made_.emplace_back(mark));
    increase(s, more);
  }
  const bool goes_on = last_process_ && !s.has(Kind::process) && !s.has(Kind::method) && !s.has(Kind::work);
  if (goes_on) go_on(before);
  const bool verb = std::any_of(s.marks.begin(), s.marks.end(), [](const Mark& m) {
    return m.kind == Kind::process || (m.kind == Kind::method && m.method.sure);
  });
  note_context(s);
  last_process_ = drafts_.size() > before || !loose.empty() || verb;
}

}  // namespace sealworthy::prose
