// A gauge pressure can't be passed where an absolute one is wanted.
#include <sealworthy/quantity.hpp>

using namespace sealworthy;

#ifdef SHOULD_COMPILE
double boils_at(AbsolutePressure);
double here(AbsolutePressure inside) { return boils_at(inside); }
#else
double boils_at(AbsolutePressure);
double here(GaugePressure gauge) { return boils_at(gauge); }
#endif
