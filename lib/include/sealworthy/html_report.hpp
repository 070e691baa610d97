#pragma once

/// The report of a run as one page: it loads nothing, so it can be kept, mailed and printed. The page lists
/// the cards with their findings, filters them, and plots each card's time and pressure beside its table.

#include <memory>
#include <sealworthy/report.hpp>
#include <string>

namespace sealworthy {

/// Each text that recurs stands in the page once: 10,000 cards make a few megabytes. Memory: the distinct
/// texts of the run. A writer is for one run.
class HtmlWriter : public ReportWriter {
 public:
  HtmlWriter();
  ~HtmlWriter() override;
  std::string begin() override;
  std::string recipe(const RecipeReport& report) override;
  std::string end(const Summary& summary) override;

 private:
  class Texts;
  std::unique_ptr<Texts> texts_;
  bool first_ = true;
};

}  // namespace sealworthy
