#include <iostream>
#include <sealworthy/checker.hpp>

int main() {
  const auto checker = sealworthy::Checker::builtin();
  const auto reports =
      checker.check_text("plum.yaml", "recipe: Plum cake in jars\ningredients: [2 cups flour, 1 egg]\n");
  for (const auto& report : reports) std::cout << report.title << ": " << to_string(report.verdict) << "\n";
  return reports.size() == 1 && reports[0].verdict == sealworthy::Verdict::hazard ? 0 : 1;
}
