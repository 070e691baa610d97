#pragma once

/// Which process serves which jar of the card.

#include "reading/methods.hpp"
#include "reading/reading.hpp"

namespace sealworthy::reading {

/// Fills Reading::jars, after the canners: every size of the card with each process that is for it. A size
/// that no process names takes those that name none, else the only one given, else it stays without a
/// process; where there is no such size those that name none are for every size. A card that names no jar
/// gets one entry a process, or one empty entry.
void read_jars(Reading& reading, const Methods& methods);

/// Fills JarProcess::tabled; after the match is known.
void look_up_tables(Reading& reading);

/// A set of kinds of table, in the order of the enum.
class TableMethods {
 public:
  void add(tested::TableMethod method) { bits_ |= bit(method); }
  [[nodiscard]] bool has(tested::TableMethod method) const { return (bits_ & bit(method)) != 0; }
  [[nodiscard]] bool empty() const { return bits_ == 0; }
  friend bool operator==(const TableMethods&, const TableMethods&) = default;

 private:
  static unsigned bit(tested::TableMethod method) { return 1U << static_cast<unsigned>(method); }
  unsigned bits_ = 0;
};

/// The kinds of table that a jar's process may be judged by: both gauges where none is said, all three where
/// the method is not said.
TableMethods table_methods(const JarProcess& jar);

}  // namespace sealworthy::reading
