#pragma once

/// Which of several products asks more of a card, and whether the card's figures meet a product's tables.

#include "reading/reading.hpp"

namespace sealworthy::reading {

/// True if the time and pressure of every jar of the card meet some option of the product's tables, by the
/// card's method and pack, at every height where it is judged. False where the card leaves a figure open.
bool meets(const tested::Product& product, const Reading& reading);

/// How much a product asks, to put products in order: one without a boiling-water table asks more than one
/// with, then the longest time that its tables hold for the card's jars decides.
double demand(const tested::Product& product, const Reading& reading);

/// True if the product's tables name the card's jars themselves, not only by the next larger size.
bool tables_jars(const tested::Product& product, const Reading& reading);

/// True if both print the same rows: the same process under two names.
bool same_tables(const tested::Product& a, const tested::Product& b);

}  // namespace sealworthy::reading
