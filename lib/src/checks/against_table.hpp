#pragma once

/// How the time and pressure of one jar's process stand beside what the matched product's tables hold for it
/// (JarProcess::tabled). Shared by the table checks; no rule is known here.

#include <optional>
#include <sealworthy/finding.hpp>
#include <span>
#include <string>
#include <string_view>

#include "reading/reading.hpp"
#include "tested/tables.hpp"

namespace sealworthy::checks {

/// The option of the table that a jar's process is compared with at one altitude.
struct Judged {
  const tested::Needed* tabled = nullptr;      ///< nullptr: nothing is tabled for this jar, method and pack
  const tested::Option::Step* step = nullptr;  ///< its step for the altitude, the highest one above all bands
  bool time = false;       ///< long enough for the step (true where the card says no time)
  bool pressure = false;   ///< high enough for the step (true where none is asked or said)
  bool published = false;  ///< some option has a step for this altitude

  [[nodiscard]] bool met() const { return tabled != nullptr && published && time && pressure; }
};

/// Which options are compared with.
struct Choice {
  std::optional<recipe::Pack> pack;           ///< unset: of every pack
  std::optional<tested::TableMethod> method;  ///< unset: of every method that the card's words allow
};

/// Compares with the best option for the card: one that is met, else one whose pressure is met with the least
/// time, else one with the least pressure. A figure that was read on a page goes before one from memory. Time
/// and pressure that the card gives as a range count with their low end. Cost: one pass over the options.
Judged judge(const reading::JarProcess& jar, Altitude height, const Choice& choice);

/// The choice that the card's own words leave: rows of its pack, or of all packs where it says none or where
/// none is tabled for its own (which is told by the pack check).
Choice card_choice(const reading::Reading& reading, const reading::JarProcess& jar);

bool takes_pack(const tested::Row& row, recipe::Pack pack);

/// The altitudes a jar is judged at; the lowest band where none is known.
std::span<const Altitude> heights_of(const reading::JarProcess& jar);

/// Up to which altitude the jar's figures meet the table; nullopt: not even in the lowest band.
std::optional<Altitude> holds_up_to(const reading::JarProcess& jar, const Choice& choice,
                                    const tested::Tables& tables);

/// True if the product has a row for the card's method, whatever the jar and pack.
bool has_method_rows(const reading::Reading& reading, const reading::JarProcess& jar);

// Words for messages.
std::string jar_words(const reading::JarProcess& jar);  ///< "pint jars", "jars"
std::string of_words(
    const reading::Reading& reading);  ///< " of \"Snap beans\"" where the match is in doubt, else ""
std::string at_words(const reading::JarProcess& jar,
                     Altitude at);                         ///< " at 5,280 ft", "" where none is known
std::string step_words(const tested::Option::Step& step);  ///< "25 minutes at 11 psi"
std::string jar_size_words(const tested::Tables& tables, tested::JarIndex jar);  ///< "pint"

/// Puts the publication and page of the row before the rule's own source.
void cite_row(Finding& finding, const Judged& judged);

/// Where a finding about the process of a jar points.
Position process_at(const reading::Reading& reading, const reading::JarProcess& jar);

}  // namespace sealworthy::checks
