#include "report/understood.hpp"

#include <fmt/format.h>

#include "quantity/figures.hpp"

namespace sealworthy::report {
namespace {

using recipe::Placed;
using recipe::Process;

std::string_view words_of(recipe::Pack pack) { return pack == recipe::Pack::hot ? "hot" : "raw"; }
std::string_view words_of(recipe::Gauge gauge) { return gauge == recipe::Gauge::dial ? "dial" : "weighted"; }

class Lines {
 public:
  template <class T>
  void add(std::string what, std::string value, const Placed<T>& from) {
    all_.push_back({std::move(what), std::move(value), from.text, from.at});
  }
  void add_process(const Process& process, const std::string& which) {
    if (process.method) add(which + "method", std::string(process.method->value), *process.method);
    if (process.gauge) add(which + "gauge", std::string(words_of(process.gauge->value)), *process.gauge);
    if (process.pressure)
      add(which + "pressure", quantity::words_of(process.pressure->value), *process.pressure);
    if (process.time) add(which + "time", quantity::words_of(process.time->value), *process.time);
    if (process.altitude)
      add(which + "altitude", quantity::words(process.altitude->value), *process.altitude);
    if (process.headspace)
      add(which + "headspace", quantity::words_of(process.headspace->value), *process.headspace);
    for (const auto& jar : process.jars) add(which + "jars", jar.value.name, jar);
  }
  std::vector<UnderstoodLine> take() { return std::move(all_); }

 private:
  std::vector<UnderstoodLine> all_;
};

}  // namespace

std::vector<UnderstoodLine> understood_lines(const recipe::Recipe& recipe) {
  Lines lines;
  if (recipe.makes) lines.add("makes", std::string(recipe.makes->text), *recipe.makes);
  if (recipe.pack) lines.add("pack", std::string(words_of(recipe.pack->value)), *recipe.pack);
  for (const auto& jar : recipe.jars) lines.add("jars", jar.value.name, jar);
  if (recipe.headspace)
    lines.add("headspace", quantity::words_of(recipe.headspace->value), *recipe.headspace);
  for (const auto& home : recipe.homes) lines.add("kitchen altitude", quantity::words(home.value), home);
  int number = 0;
  for (const Process& process : recipe.processes) {
    ++number;
    lines.add_process(process, recipe.processes.size() > 1 ? fmt::format("process {} ", number) : "process ");
  }
  return lines.take();
}

std::vector<std::string> not_found(const recipe::Recipe& recipe) {
  std::vector<std::string> out;
  bool jars = !recipe.jars.empty(), headspace = recipe.headspace.has_value(), method = false, time = false;
  for (const Process& process : recipe.processes) {
    jars = jars || !process.jars.empty();
    headspace = headspace || process.headspace;
    method = method || process.method;
    time = time || process.time;
  }
  if (!recipe.pack) out.emplace_back("pack");
  if (!jars) out.emplace_back("jars");
  if (!headspace) out.emplace_back("headspace");
  if (recipe.processes.empty()) {
    out.emplace_back("process");
  } else {
    if (!method) out.emplace_back("method");
    if (!time) out.emplace_back("time");
  }
  return out;
}

}  // namespace sealworthy::report
