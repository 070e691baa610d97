// A cup is no weight: only a food's density leads from one to the other.
#include <sealworthy/quantity.hpp>

using namespace sealworthy;

#ifdef SHOULD_COMPILE
Mass all(Mass a, Mass b) { return a + b; }
#else
Mass all(Mass a, Volume b) { return a + b; }
#endif
