// Figures are read and written the same whatever the locale says about decimal points.

#include <doctest/doctest.h>

#include <clocale>
#include <locale>
#include <string>

#include "quantity/amount.hpp"
#include "quantity/figures.hpp"

using namespace sealworthy;
using namespace sealworthy::quantity;

namespace {

/// A C++ locale with a decimal comma and points between thousands, whether or not the system has one.
struct DecimalComma : std::numpunct<char> {
  [[nodiscard]] char do_decimal_point() const override { return ','; }
  [[nodiscard]] char do_thousands_sep() const override { return '.'; }
  [[nodiscard]] std::string do_grouping() const override { return "\3"; }
};

class WithDecimalComma {
 public:
  WithDecimalComma() : c_(std::setlocale(LC_ALL, nullptr)) {
    // a Debian system may have none of these; the C++ locale below is always there
    for (const char* name : {"de_DE.UTF-8", "fr_FR.UTF-8", "it_IT.UTF-8", "de_DE"})
      if (std::setlocale(LC_ALL, name) != nullptr) break;
    std::locale::global(std::locale(std::locale(), new DecimalComma));
  }
  ~WithDecimalComma() {
    std::locale::global(std::locale::classic());
    std::setlocale(LC_ALL, c_.c_str());
  }
  WithDecimalComma(const WithDecimalComma&) = delete;
  WithDecimalComma& operator=(const WithDecimalComma&) = delete;

 private:
  std::string c_;
};

}  // namespace

TEST_CASE("figures do not depend on the locale") {
  const WithDecimalComma locale;
  CHECK(read_amount("1.5 cups", Units::us)->stated.low == 1.5);
  CHECK(read_amount("1,5 kg", Units::us)->stated.low == 1.5);
  CHECK(read_amount("5,280 g", Units::us)->stated.low == 5280);
  CHECK(in_feet(std::get<Interval<Altitude>>(read_altitude("5,280.5 ft")).low) == doctest::Approx(5280.5));
  CHECK(in_psi(std::get<Interval<GaugePressure>>(read_pressure("10.5 psi")).low) == doctest::Approx(10.5));
  CHECK(kitchen_number(0.07) == "0.07");
  CHECK(grouped(5280) == "5,280");
  CHECK(words(psi_gauge(10.95)) == "10.95 psi");
}
