// Minutes are not degrees.
#include <sealworthy/quantity.hpp>

using namespace sealworthy;

#ifdef SHOULD_COMPILE
bool enough(Duration found, Duration wanted) { return found == wanted; }
#else
bool enough(Duration found, Temperature wanted) { return found == wanted; }
#endif
