// Both are lengths measured in inches; a headspace is not the size of a piece.
#include <sealworthy/quantity.hpp>

using namespace sealworthy;

#ifdef SHOULD_COMPILE
Headspace sum(Headspace a, Headspace b) { return a + b; }
#else
Headspace sum(Headspace a, PieceSize b) { return a + b; }
#endif
