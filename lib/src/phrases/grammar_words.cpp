#include <array>

#include "phrases/negation.hpp"

namespace sealworthy::phrases {
namespace {

using Row = std::pair<std::string_view, std::uint32_t>;
constexpr std::uint32_t modal = finite;
constexpr std::uint32_t clause = turn;

// A word may stand twice: its jobs add up.
constexpr std::array words{
    // Determiners, which a pattern reads over.
    Row{"the", determiner}, Row{"a", determiner}, Row{"an", determiner}, Row{"your", determiner},
    Row{"our", determiner}, Row{"my", determiner}, Row{"their", determiner}, Row{"its", determiner},
    Row{"his", determiner}, Row{"her", determiner}, Row{"this", determiner | points_back},
    Row{"these", determiner | points_back}, Row{"those", determiner | points_back}, Row{"each", determiner},
    Row{"every", determiner}, Row{"all", determiner}, Row{"both", determiner}, Row{"any", determiner},
    Row{"some", determiner}, Row{"such", determiner | points_back},
    // Words that deny what follows, to the end of the clause.
    Row{"not", denier}, Row{"never", denier}, Row{"don't", denier}, Row{"dont", denier},
    Row{"doesn't", denier}, Row{"doesnt", denier}, Row{"didn't", denier}, Row{"didnt", denier},
    Row{"won't", denier}, Row{"wont", denier}, Row{"can't", denier}, Row{"cant", denier},
    Row{"cannot", denier}, Row{"couldn't", denier}, Row{"shouldn't", denier}, Row{"shouldnt", denier},
    Row{"wouldn't", denier}, Row{"mustn't", denier}, Row{"mustnt", denier}, Row{"needn't", denier},
    Row{"neednt", denier}, Row{"isn't", denier}, Row{"isnt", denier}, Row{"aren't", denier},
    Row{"arent", denier}, Row{"wasn't", denier}, Row{"weren't", denier}, Row{"haven't", denier},
    Row{"hasn't", denier}, Row{"hadn't", denier}, Row{"neither", denier | points_back}, Row{"nor", denier},
    Row{"seldom", denier}, Row{"rarely", denier},
    // Words that deny the noun phrase after them.
    Row{"no", noun_denier}, Row{"without", noun_denier}, Row{"minus", noun_denier}, Row{"none", noun_denier},
    Row{"nobody", noun_denier}, Row{"nothing", noun_denier}, Row{"sans", noun_denier},
    // Verbs that deny their object.
    Row{"skip", denying_verb}, Row{"skips", denying_verb}, Row{"skipped", denying_verb},
    Row{"skipping", denying_verb}, Row{"omit", denying_verb}, Row{"omits", denying_verb},
    Row{"omitted", denying_verb}, Row{"omitting", denying_verb}, Row{"avoid", denying_verb},
    Row{"avoids", denying_verb}, Row{"avoided", denying_verb}, Row{"avoiding", denying_verb},
    Row{"forget", denying_verb}, Row{"forgets", denying_verb}, Row{"forgot", denying_verb},
    Row{"forgotten", denying_verb}, Row{"forgetting", denying_verb}, Row{"neglect", denying_verb},
    Row{"neglected", denying_verb}, Row{"neglecting", denying_verb}, Row{"refrain", denying_verb},
    Row{"forgo", denying_verb}, Row{"forego", denying_verb}, Row{"bypass", denying_verb},
    Row{"eliminate", denying_verb}, Row{"fail", denying_verb}, Row{"fails", denying_verb},
    Row{"failed", denying_verb}, Row{"ditch", denying_verb}, Row{"dispense", denying_verb},
    // Words that deny all of their clause.
    Row{"unnecessary", denying_word}, Row{"needless", denying_word}, Row{"pointless", denying_word},
    Row{"unneeded", denying_word}, Row{"superfluous", denying_word}, Row{"optional", denying_word},
    Row{"waste", denying_word}, Row{"instead", instead_of}, Row{"rather", instead_of},
    Row{"lieu", instead_of}, Row{"other", instead_of}, Row{"opposed", instead_of}, Row{"stop", instead_of},
    Row{"quit", instead_of},
    // Words that begin another clause.
    Row{"but", clause | contrast}, Row{"then", clause}, Row{"so", clause}, Row{"because", clause},
    Row{"until", clause}, Row{"till", clause}, Row{"when", clause}, Row{"while", clause},
    Row{"since", clause}, Row{"although", clause | contrast}, Row{"though", clause | contrast},
    Row{"whereas", clause}, Row{"however", clause | contrast}, Row{"after", clause}, Row{"before", clause},
    Row{"once", clause}, Row{"yet", contrast}, Row{"still", contrast}, Row{"anyway", contrast},
    Row{"if", clause | condition}, Row{"unless", clause | condition}, Row{"whether", clause | condition},
    Row{"lest", clause | condition}, Row{"in", 0}, Row{"and", joiner_and}, Row{"or", joiner_or},
    Row{"plus", joiner_and}, Row{"is", be_form | finite}, Row{"are", be_form | finite},
    Row{"was", be_form | finite}, Row{"were", be_form | finite}, Row{"be", be_form}, Row{"been", be_form},
    Row{"being", be_form}, Row{"that's", be_form | finite | points_back},
    Row{"it's", be_form | finite | points_back}, Row{"you", finite}, Row{"we", finite}, Row{"i", finite},
    Row{"he", finite}, Row{"she", finite}, Row{"it", finite | points_back}, Row{"they", finite | points_back},
    Row{"will", modal}, Row{"would", modal}, Row{"may", modal}, Row{"might", modal}, Row{"could", modal},
    Row{"should", modal}, Row{"must", modal}, Row{"does", modal}, Row{"has", modal}, Row{"goes", modal},
    Row{"that", determiner | relative | points_back}, Row{"which", relative | points_back},
    Row{"who", relative}, Row{"just", softener}, Row{"simply", softener}, Row{"only", softener},
    Row{"merely", softener},
    // Verbs that begin a direction; in their base form they end a noun phrase that "and" goes on from.
    Row{"add", direction}, Row{"boil", direction}, Row{"bring", direction}, Row{"close", direction},
    Row{"cook", direction}, Row{"cool", direction}, Row{"cover", direction}, Row{"drain", direction},
    Row{"fill", direction}, Row{"go", direction}, Row{"heat", direction}, Row{"keep", direction},
    Row{"lay", direction}, Row{"leave", direction}, Row{"let", direction}, Row{"lift", direction},
    Row{"mix", direction}, Row{"pack", direction}, Row{"place", direction}, Row{"pour", direction},
    Row{"press", direction}, Row{"process", direction}, Row{"put", direction}, Row{"remove", direction},
    Row{"return", direction}, Row{"rinse", direction}, Row{"screw", direction}, Row{"seal", direction},
    Row{"serve", direction}, Row{"set", direction}, Row{"shelve", direction}, Row{"simmer", direction},
    Row{"stand", direction}, Row{"start", direction}, Row{"stir", direction}, Row{"store", direction},
    Row{"take", direction}, Row{"tighten", direction}, Row{"turn", direction}, Row{"use", direction},
    Row{"wait", direction}, Row{"wash", direction}, Row{"wipe", direction},
    // Numbers in words.
    Row{"half", number_word}, Row{"quarter", number_word}, Row{"one", number_word}, Row{"two", number_word},
    Row{"three", number_word}, Row{"four", number_word}, Row{"five", number_word}, Row{"six", number_word},
    Row{"seven", number_word}, Row{"eight", number_word}, Row{"nine", number_word}, Row{"ten", number_word},
    Row{"eleven", number_word}, Row{"twelve", number_word}, Row{"fifteen", number_word},
    Row{"twenty", number_word}, Row{"thirty", number_word}, Row{"forty", number_word},
    Row{"fifty", number_word}, Row{"sixty", number_word}, Row{"ninety", number_word},
    Row{"couple", number_word}, Row{"few", number_word}, Row{"several", number_word},
    Row{"dozen", number_word}, Row{"hundred", number_word}};

}  // namespace

std::span<const Row> grammar_words() { return words; }

}  // namespace sealworthy::phrases
