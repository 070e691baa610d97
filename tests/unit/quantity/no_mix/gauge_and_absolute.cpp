// What the gauge shows is not the pressure in the canner; the air's has to be added.
#include <sealworthy/quantity.hpp>

using namespace sealworthy;

#ifdef SHOULD_COMPILE
AbsolutePressure inside(GaugePressure gauge, AbsolutePressure air) { return absolute(gauge, air); }
#else
AbsolutePressure inside(GaugePressure gauge, AbsolutePressure air) { return gauge + air; }
#endif
