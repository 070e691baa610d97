// A bare number has no unit.
#include <sealworthy/quantity.hpp>

using namespace sealworthy;

#ifdef SHOULD_COMPILE
Duration longer(Duration time) { return time + minutes(5); }
#else
Duration longer(Duration time) { return time + 5.0; }
#endif
