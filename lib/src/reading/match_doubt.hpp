#pragma once

/// Doubts about a match in words that a cook understands.

#include <string>
#include <vector>

#include "reading/match_tally.hpp"

namespace sealworthy::reading {

/// What speaks against a product: foods it has no place for, foods it needs, forms it does not cover or asks
/// for. `places`: lines and foods of its formula that are not as published; 0 where it has none.
std::string doubt_about(const Candidate& candidate, const Tally& tally, const Reading& reading,
                        const MatchIndex::Impl& index, std::size_t places);

/// The card leaves open which of several products it is: the form that tells them apart, or their titles.
std::string doubt_between(const std::vector<Candidate>& candidates);

/// "corn", "corn and beans", "corn, beans and 2 more".
std::string listed(const std::vector<std::string>& items);

}  // namespace sealworthy::reading
