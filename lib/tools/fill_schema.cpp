// Build-time program: fills the ids of the tested processes and of the rules into the schema of the card, so
// that editors can offer them.
//   fill_schema TEMPLATE OUTPUT
// Ids of further rules (--rules) stay allowed: the lists are offered, not required.

#include <fstream>
#include <iostream>
#include <nlohmann/json.hpp>
#include <sealworthy/checker.hpp>

#include "knowledge/knowledge.hpp"

namespace {

using Json = nlohmann::ordered_json;

/// One of the ids, or any other text.
void offer(Json& definition, const std::vector<std::string>& ids) {
  Json other = definition;
  definition = Json{{"anyOf", Json::array({{{"enum", ids}}, std::move(other)})}};
}

}  // namespace

int main(int argc, char** argv) try {
  if (argc != 3) {
    std::cerr << "fill_schema TEMPLATE OUTPUT\n";
    return 2;
  }
  std::ifstream in(argv[1]);
  auto schema = Json::parse(in);
  const auto checker = sealworthy::Checker::builtin();
  std::vector<std::string> processes;
  for (const auto& product : checker.knowledge().tables.products()) processes.emplace_back(product.id);
  std::vector<std::string> rules;
  for (const auto& rule : checker.knowledge().rules) rules.push_back(rule.id);
  offer(schema.at("definitions").at("process_id"), processes);
  offer(schema.at("definitions").at("rule_id"), rules);
  std::ofstream out(argv[2]);
  out << schema.dump(1) << '\n';
  return out.good() ? 0 : 1;
} catch (const std::exception& problem) {
  std::cerr << "fill_schema: " << problem.what() << '\n';
  return 1;
}
