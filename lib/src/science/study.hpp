#pragma once

/// From a Reading to the science behind it, and a finding's "what this means".

#include <sealworthy/study.hpp>

#include "knowledge/knowledge.hpp"
#include "reading/reading.hpp"

namespace sealworthy::science {

Study study_of(const reading::Reading& reading, const knowledge::Knowledge& knowledge);

/// What a finding's figures do, in a sentence or two; "" where science adds nothing.
std::string meaning_of(const Finding& finding, const Study& study, const knowledge::Knowledge& knowledge);

}  // namespace sealworthy::science
