#include "fake_card.hpp"

#include <algorithm>
#include <limits>

namespace sealworthy::checks::fake {
namespace {

const knowledge::Knowledge& knowledge() { return knowledge::Knowledge::builtin(); }

template <class T>
Interval<T> interval(T low, T high, double given_high) {
  return given_high > 0 ? Interval<T>{low, high} : Interval<T>::exactly(low);
}

}  // namespace

tested::JarIndex size_of(std::string_view id) {
  const auto jars = knowledge().tables.jars();
  const auto found = std::find_if(jars.begin(), jars.end(), [&](const auto& jar) { return jar.id == id; });
  return static_cast<tested::JarIndex>(found - jars.begin());
}

Card::Card(tested::ProductClass product_class) {
  product.id = "ridge-road-beans";
  product.title = "Ridge road beans";
  product.acid_class = product_class;
  product.headspace.push_back({Interval<Headspace>::exactly(headspace_inches(1)), {}, {}, ""});
  recipe.title = {"Ridge road beans", {1, 9}, "Ridge road beans"};
  recipe.pack = recipe::Placed<recipe::Pack>{recipe::Pack::hot, {4, 7}, "hot"};
  recipe.process_at = Position{7, 1};
  process_.at = {7, 10};
  process_.method = recipe::Placed<std::string_view>{"boiling water", {8, 11}, "boiling water"};
  jar("pint");
  headspace(1);
}

Card& Card::row(tested::TableMethod method, const char* packs, const char* jar,
                std::vector<std::vector<Step>> options) {
  const std::string_view words = packs;
  tested::Row row;
  row.method = method;
  row.hot = words.find("hot") != std::string_view::npos;
  row.raw = words.find("raw") != std::string_view::npos;
  row.jar = size_of(jar);
  row.source = "A table, page 1";
  for (const auto& steps : options) {
    tested::Option option;
    Altitude from = sealworthy::feet(0);
    for (const Step& step : steps) {
      const Altitude to = step.to_ft > 0 ? sealworthy::feet(step.to_ft)
                                         : Altitude::from_si(std::numeric_limits<double>::infinity());
      tested::Option::Step made{{from, to}, Duration::from_si(step.minutes * 60), {}, step.not_recommended};
      if (step.psi > 0) made.pressure = psi_gauge(step.psi);
      option.steps.push_back(made);
      from = to;
    }
    row.options.push_back(std::move(option));
  }
  product.rows.push_back(std::move(row));
  return *this;
}

Card& Card::pack(std::optional<recipe::Pack> pack) {
  recipe.pack.reset();
  if (pack) recipe.pack = recipe::Placed<recipe::Pack>{*pack, {4, 7}, ""};
  return *this;
}

Card& Card::jar(const char* text) {
  jar_ = recipe::Placed<quantity::JarText>{std::get<0>(quantity::read_jar(text)), {5, 7}, text};
  return *this;
}

Card& Card::no_jar() {
  jar_.reset();
  return *this;
}

Card& Card::method(reading::MethodKind kind, std::optional<recipe::Gauge> gauge) {
  kind_ = kind;
  gauge_ = gauge;
  return *this;
}

Card& Card::minutes(double low, double high) {
  const auto duration = [](double m) { return Duration::from_si(m * 60); };
  process_.time =
      recipe::Placed<Interval<Duration>>{interval(duration(low), duration(high), high), {9, 9}, ""};
  return *this;
}

Card& Card::psi(double low, double high) {
  process_.pressure =
      recipe::Placed<Interval<GaugePressure>>{interval(psi_gauge(low), psi_gauge(high), high), {10, 13}, ""};
  return *this;
}

Card& Card::headspace(double inches) {
  recipe.headspace = recipe::Placed<Interval<Headspace>>{
      Interval<Headspace>::exactly(headspace_inches(inches)), {6, 12}, ""};
  return *this;
}

Card& Card::feet(double height) {
  heights_.push_back(sealworthy::feet(height));
  std::sort(heights_.begin(), heights_.end(), std::greater<>());
  return *this;
}

reading::Reading& Card::read() {
  recipe.processes = {process_};
  made_.reading = {};
  reading::Reading& reading = made_.reading;
  reading.recipe = &recipe;
  reading.tables = &knowledge().tables;
  reading.catalogue = &knowledge().catalogue;
  reading.match.product = &product;
  reading.match.by = reading::Match::By::follows;
  static constexpr reading::JarClass classes[] = {reading::JarClass::acid, reading::JarClass::acidified,
                                                  reading::JarClass::low_acid, reading::JarClass::fermented,
                                                  reading::JarClass::sugar_preserve};
  reading.jar_class = classes[static_cast<std::size_t>(product.acid_class)];
  reading::JarProcess jar;
  jar.jar_at = {5, 7};
  if (jar_) {
    jar.jar = &jar_->value;
    jar.size = knowledge().tables.jar_size(jar_->value);
  }
  jar.process = &recipe.processes.front();
  jar.method = kind_;
  jar.method_name = "a canner";
  jar.gauge = gauge_;
  jar.headspace = recipe.headspace;
  jar.heights = heights_;
  reading.altitude.judged = heights_;
  reading.jars.push_back(jar);
  reading::look_up_tables(reading);
  return reading;
}

Results Card::run(std::string_view check) {
  const reading::Reading& reading = read();
  Results results;
  for (std::size_t i = 0; i < registry().size(); ++i) {
    if (registry()[i].name == check) knowledge().checks[i]->run(reading, results);
  }
  return results;
}

std::string ids(const Results& results) {
  std::string all;
  for (const auto& finding : results.findings) all += (all.empty() ? "" : " ") + finding.rule;
  return all;
}

Point::State state(const Results& results, PointKind kind) {
  auto worst = Point::State::held;
  bool any = false;
  for (const auto& point : results.points) {
    if (point.kind != kind) continue;
    any = true;
    worst = std::max(worst, point.state);
  }
  return any ? worst : Point::State::unknown;
}

bool recorded(const Results& results, PointKind kind) {
  return std::any_of(results.points.begin(), results.points.end(),
                     [&](const Point& p) { return p.kind == kind; });
}

}  // namespace sealworthy::checks::fake
