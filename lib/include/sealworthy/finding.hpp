#pragma once

/// What the checker says about one recipe: findings, points and a verdict.

#include <memory>
#include <optional>
#include <sealworthy/position.hpp>
#include <string>
#include <string_view>
#include <vector>

namespace sealworthy {

/// Signal words of ANSI Z535 / ISO 3864, worst last so that they compare.
enum class Severity { notice, caution, warning, danger };
/// What a finding is about.
enum class Topic {
  method,
  acid,
  altitude,
  time,
  pressure,
  headspace,
  jar,
  pack,
  ingredient,
  change,
  practice,
  equipment,
  storage,
  card
};
/// `tested` only when every point of one published process was compared and holds. Finding nothing proves
/// nothing.
enum class Verdict { tested, unproven, hazard, unreadable };
/// How the figures of a source were read by the people who entered them.
enum class Read { original, reprint, memory };

std::string_view to_string(Severity) noexcept;
std::string_view to_string(Topic) noexcept;
std::string_view to_string(Verdict) noexcept;
std::string_view to_string(Read) noexcept;

struct Finding {
  std::string rule;  ///< id of the rule under rules/, for `explain`
  Severity severity = Severity::notice;
  Topic topic = Topic::card;
  Position at;
  std::string message;               ///< what is wrong, with the figure found and the figure needed
  std::string why;                   ///< why it can hurt
  std::string instead;               ///< what to do
  std::vector<std::string> sources;  ///< publication and page; says "from memory" where nobody saw the page
  std::string found;                 ///< the card's figure alone, empty where there is none
  std::string needed;                ///< the tested figure alone
  std::string meaning;               ///< what the figures do; only with CheckOptions::explain
  bool from_kitchen = false;         ///< `at` is in the kitchen file: it, not the card, is at fault
  std::string
      accepted_because;  ///< the card's `accept:` reason; such a finding does not decide the exit status
  std::string accepted_until;  ///< last day (ISO) of an `accept:` that no longer holds, else empty
  bool known = false;          ///< listed in a baseline; it does not decide the exit status either

  /// Whether it counts for the exit status: neither accepted nor known.
  [[nodiscard]] bool counts() const { return accepted_because.empty() && !known; }
};

/// Deciding points of a tested process. All must be held or assumed for `tested`.
enum class PointKind {
  food,
  form,
  acid,
  amounts,
  pack,
  jar,
  headspace,
  method,
  gauge,
  pressure,
  time,
  altitude
};
std::string_view to_string(PointKind) noexcept;

struct Point {
  enum class State { held, assumed, unknown, differs };
  PointKind kind = PointKind::food;
  State state = State::unknown;
  std::string found;
  std::string needed;
};
std::string_view to_string(Point::State) noexcept;

struct Matched {
  std::string id;  ///< product id; empty when no tested process was found
  std::string title;
  std::string source;     ///< publication and page of the row
  std::string by;         ///< "follows" or "found"
  std::string holds_for;  ///< "0 to 1,000 ft": altitudes at which the card's figures meet the table
  bool from_memory = false;
};

/// One line of a card beside the line of the tested formula that it was compared with.
struct ComparedLine {
  enum class Mark {
    same,     ///< the published amount, times the factor
    free,     ///< the formula leaves it to the cook
    allowed,  ///< differs, and a publication judges the change harmless
    more,
    less,
    missing,  ///< not on the card
    added,    ///< not in the formula
    unknown   ///< can't be told
  };
  Mark mark = Mark::unknown;
  std::string card;  ///< the card's words; empty where it lacks the line
  std::string
      published;     ///< the formula's words, the amount scaled to the card's batch; empty for what is added
  std::string note;  ///< "33 % less", or why it can't be told
  std::optional<double> percent;  ///< of the published amount at the card's batch, in doubt the nearest; of
                                  ///< lines that are the same, more, less (100: the same)
  Position at;                    ///< of the card's line; line 0 where there is none
};
std::string_view to_string(ComparedLine::Mark) noexcept;

/// A card side by side with a tested formula. A difference says nothing about safety by itself: the findings
/// do.
struct Comparison {
  std::string id;  ///< of the formula's product
  std::string title;
  double factor = 1;                ///< the card's batch, in published batches
  std::vector<ComparedLine> lines;  ///< in the formula's order, then what is added in the card's
};

/// One band of the table that a card was compared with.
struct TableStep {
  double from_ft = 0;
  double to_ft = 0;  ///< infinite for a band without an upper end; the figure belongs to the band
  double minutes = 0;
  std::optional<double> psi;  ///< on the gauge; none for boiling water
};

/// A card's time and pressure for one jar beside the row of the published table, over the altitude.
struct TableUse {
  std::string jar;     ///< "pint"; empty where the card names none
  std::string method;  ///< "boiling-water", "pressure-dial" or "pressure-weighted"
  std::optional<double> minutes;
  std::optional<double> psi;
  std::vector<double> judged_at_ft;  ///< altitudes that the card was judged at, highest first
  std::vector<TableStep> steps;      ///< ascending, without gaps
};

struct Study;  // study.hpp

struct RecipeReport {
  std::string path;
  int document = 1;  ///< number of the YAML document in its file, from 1
  std::string title;
  Position at;
  Verdict verdict = Verdict::unproven;
  Matched matched;
  std::vector<Finding> findings;  ///< sorted: severity (worst first), then position, then rule
  std::vector<Point> points;
  std::optional<Comparison> compared;  ///< where asked for and the matched process has a formula
  std::string kitchen;  ///< path of the kitchen file that it was judged with; findings may point there
  std::vector<TableUse> tables;           ///< where a published table was compared with
  std::shared_ptr<const Study> study;     ///< the science behind it; only with CheckOptions::explain
  std::vector<std::string> assumed;       ///< "tested, provided that ..."
  std::vector<std::string> source_lines;  ///< the card's own lines that findings point at ...
  std::vector<int> source_line_numbers;   ///< ... and their numbers, ascending
};

}  // namespace sealworthy
