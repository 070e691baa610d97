// Both are lengths; a headspace is not an altitude.
#include <sealworthy/quantity.hpp>

using namespace sealworthy;

#ifdef SHOULD_COMPILE
bool fits(Headspace left, Headspace wanted) { return left < wanted; }
#else
bool fits(Headspace left, Altitude wanted) { return left < wanted; }
#endif
