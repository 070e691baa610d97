// Kinds of quantity do not mix. What is proved here for every pair is shown for a few whole programs in
// no_mix/.

#include <doctest/doctest.h>

#include <sealworthy/interval.hpp>
#include <sealworthy/quantity.hpp>
#include <type_traits>

using namespace sealworthy;

namespace {

template <class A, class B>
concept Adds = requires(A a, B b) {
  a + b;
};
template <class A, class B>
concept Subtracts = requires(A a, B b) {
  a - b;
};
template <class A, class B>
concept Compares = requires(A a, B b) {
  a < b;
};
template <class A, class B>
concept Equals = requires(A a, B b) {
  a == b;
};
template <class A, class B>
concept Divides = requires(A a, B b) {
  a / b;
};
template <class A, class B>
concept Multiplies = requires(A a, B b) {
  a* b;
};

template <class A, class B>
constexpr bool mix =
    Adds<A, B> || Subtracts<A, B> || Compares<A, B> || Equals<A, B> || Divides<A, B> ||
    std::is_convertible_v<A, B> || std::is_assignable_v<A&, B> || std::is_constructible_v<A, B> ||
    Equals<Interval<A>, Interval<B>> || Adds<Interval<A>, Interval<B>>;

template <class A, class... Others>
constexpr bool mixes_with_any = (false || ... || (!std::is_same_v<A, Others> && mix<A, Others>));

template <class... Kinds>
constexpr bool any_two_mix = (false || ... || mixes_with_any<Kinds, Kinds...>);

template <class A>
concept CountsWithItself = requires(A a, A b) {
  a + b;
  a - b;
  a / b;
  a < b;
  a == b;
};

template <class A>
constexpr bool sound =
    CountsWithItself<A> && !Multiplies<A, A> && !Adds<A, double> && !Compares<A, double> &&
    !Equals<A, double> && !std::is_convertible_v<double, A> && !std::is_convertible_v<A, double> &&
    sizeof(A) == sizeof(double) && std::is_trivially_copyable_v<A>;

static_assert(!any_two_mix<Mass, Volume, Headspace, PieceSize, Altitude, GaugePressure, AbsolutePressure,
                           Temperature, Duration, Count>);
static_assert(sound<Mass> && sound<Volume> && sound<Headspace> && sound<PieceSize> && sound<Altitude> &&
              sound<GaugePressure> && sound<AbsolutePressure> && sound<Temperature> && sound<Duration> &&
              sound<Count>);
// the one way from a gauge's figure to absolute pressure needs the air's
static_assert(std::is_same_v<decltype(absolute(psi_gauge(10), pascals_absolute(101325))), AbsolutePressure>);
static_assert(!std::is_invocable_v<decltype(absolute), GaugePressure, GaugePressure>);

// worked out by the compiler
static_assert(in_minutes(hours(1.5)) == 90);
static_assert(Interval<Duration>{minutes(20), minutes(25)}.contains(minutes(25)));
static_assert(pounds(2) / pounds(1) == 2);
static_assert(hull(Interval<Mass>::exactly(pounds(1)), Interval<Mass>::exactly(pounds(2))).high == pounds(2));

}  // namespace

TEST_CASE("quantities count in their units") {
  CHECK(in_pounds(grams(453.59237)) == doctest::Approx(1));
  CHECK(in_grams(pounds(1)) == doctest::Approx(453.59237));
  CHECK(in_millilitres(us_fluid_ounces(32)) == doctest::Approx(946.352946));
  CHECK(in_us_cups(millilitres(250)) == doctest::Approx(1.05668820943));
  CHECK(in_inches(headspace_inches(0.25)) == doctest::Approx(0.25));
  CHECK(in_inches(piece_inches(2)) == doctest::Approx(2));
  CHECK(in_metres(feet(5280)) == doctest::Approx(1609.344));
  CHECK(in_fahrenheit(celsius(100)) == doctest::Approx(212));
  CHECK(in_celsius(fahrenheit(240)) == doctest::Approx(115.555555556));
  CHECK(in_pieces(count(3)) == 3);
  CHECK(feet(1000) < metres(305));
  CHECK((minutes(25) - minutes(5)) * 2 == minutes(40));
}

TEST_CASE("intervals") {
  const Interval<Mass> some{pounds(2), pounds(3)};
  CHECK_FALSE(some.exact());
  CHECK(some.contains(pounds(2.5)));
  CHECK(some.overlaps({pounds(3), pounds(4)}));
  CHECK_FALSE(some.overlaps({pounds(3.5), pounds(4)}));
  CHECK((some + some) == Interval<Mass>{pounds(4), pounds(6)});
  CHECK(some * 2 == Interval<Mass>{pounds(4), pounds(6)});
  CHECK(hull(some, Interval<Mass>{pounds(1), pounds(2)}) == Interval<Mass>{pounds(1), pounds(3)});
}
