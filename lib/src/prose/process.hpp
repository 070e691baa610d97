#pragma once

/// The process that directions tell: which method, for which jars, how long, at which pressure and altitude.
///
/// A time belongs to the nearest verb before it in its sentence ("simmer 5 minutes, then process 10"); only
/// those of a process count. Jar sizes, packs, gauges and altitudes belong to the figure that they stand
/// beside: "15 minutes for pints, 20 for quarts", "pints 15 minutes and quarts 20". A sentence of figures
/// without a verb goes on from the one before. What is told as not done, warned of or supposed is no process.
/// Where two readings are possible, both are kept as processes of the same jar (each is judged, the worse
/// counts), or the place is told as a doubt, which keeps the recipe from being `tested`.

#include <deque>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "prose/sentence.hpp"
#include "recipe/recipe.hpp"

namespace sealworthy::prose {

/// One process as the words have it, not yet joined with what stands elsewhere.
struct Draft {
  Position at;
  std::string_view words;  ///< of its sentence
  std::optional<recipe::Placed<std::string_view>> method;
  reading::MethodKind kind = reading::MethodKind::unknown;
  std::optional<recipe::Placed<recipe::Gauge>> gauge;
  std::optional<recipe::Placed<Interval<GaugePressure>>> pressure;
  std::optional<recipe::Placed<Interval<Duration>>> time;
  std::optional<recipe::Placed<Interval<Altitude>>> altitude;
  std::vector<recipe::Placed<quantity::JarText>> jars;
  std::optional<recipe::Pack> pack;
};

class ProcessReader {
 public:
  explicit ProcessReader(const Vocabulary& vocabulary) : vocabulary_(vocabulary) {}

  /// To be called with the sentences in their order; each must outlive the reader.
  void read(const Sentence& sentence, const Sentence* next);
  /// True if a time of a process was found.
  [[nodiscard]] bool found() const { return !drafts_.empty(); }
  /// The processes, to be called last. `title`: a method that only the title names.
  std::vector<Draft> finish(const Sentence* title);
  [[nodiscard]] const std::vector<recipe::Doubt>& doubts() const { return doubts_; }

 private:
  using Kind = Mark::Kind;
  /// A figure with what was told beside it.
  struct Labelled {
    const Mark* mark = nullptr;
    std::vector<const Mark*> labels;
  };
  struct Segment {
    std::vector<const Mark*> methods;
    std::vector<const Mark*> marks;
  };

  [[nodiscard]] bool is_process(const Sentence& s, const Mark& time) const;
  [[nodiscard]] const Mark* owner(const Sentence& s, const Mark& time) const;
  [[nodiscard]] bool jars_stand_in_it(const Sentence& s, const Mark& verb) const;
  [[nodiscard]] bool below_the_boil(const Sentence& s, const Mark& time) const;
  [[nodiscard]] bool closed_in_water(const Sentence& s, const Mark& verb) const;
  void name_water_bath(const Sentence& s, const std::vector<const Mark*>& times, std::vector<Segment>& parts);
  [[nodiscard]] static bool shortens(const Sentence& s);
  [[nodiscard]] static bool done_by(const Sentence& s, const Mark& method, const Mark& time);
  [[nodiscard]] static bool stands_in(const Sentence& s, const Mark& time, const Mark& method);
  static bool another_time(const Sentence& s, std::size_t number, const std::vector<const Mark*>& times);
  [[nodiscard]] std::vector<const Mark*> own_times(const Sentence& s, std::vector<Mark>& loose);
  [[nodiscard]] std::vector<Segment> segments(const Sentence& s, const std::vector<const Mark*>& times) const;
  [[nodiscard]] static bool taken_back(const Sentence& s, const Mark& figure);
  [[nodiscard]] bool set_aside(const Sentence& s, const Sentence* next);
  void draft(const Sentence& s, const Segment& segment, const std::vector<const Mark*>& times,
             const Mark* added);
  static std::vector<Labelled> label(const Sentence& s, const std::vector<const Mark*>& figures,
                                     const std::vector<const Mark*>& labels, bool& left_over);
  static std::vector<Labelled> label_in_one(const Sentence& s, const std::vector<const Mark*>& figures,
                                            const std::vector<const Mark*>& labels, bool& left_over);
  static void one_gauge_for_all(std::vector<Labelled>& pressures, const std::vector<const Mark*>& gauges);
  void increase(const Sentence& s, const std::vector<const Mark*>& more);
  void pressures_alone(const Sentence& s);
  void note_context(const Sentence& s);
  void bound_open_ranges();
  [[nodiscard]] bool lies_above(const Draft& told, const Draft& draft) const;
  void go_on(std::size_t first);
  [[nodiscard]] std::vector<Draft> for_the_other_gauge() const;
  void give_pressures();
  void give_methods(const Sentence* title);
  void give_gauges();
  void doubt(const Sentence& s, std::string reason);

  const Vocabulary& vocabulary_;
  std::vector<Draft> drafts_;
  std::vector<Draft> pressures_;  ///< told apart from any time
  std::vector<recipe::Doubt> doubts_;
  /// Methods named in words that mean nothing but canning, wherever they stand.
  std::vector<std::pair<recipe::Placed<std::string_view>, reading::MethodKind>> methods_;
  std::vector<recipe::Placed<recipe::Gauge>> gauges_;
  bool jars_ = false;          ///< a sentence before spoke of jars
  bool filled_ = false;        ///< a sentence before told of filling jars
  bool closed_ = false;        ///< ... and of closing them
  bool last_process_ = false;  ///< the sentence before told of the process
  std::deque<Mark> made_;      ///< marks that were worked out, not written
};

}  // namespace sealworthy::prose
