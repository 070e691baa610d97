#pragma once

/// Reading the products of one file of rules/processes.

#include <vector>

#include "tested/load_context.hpp"

namespace sealworthy::tested {

/// Appends the products of a document with `products:`; what is wrong goes to the context's sink.
void load_products(const yaml::Document& document, LoadContext& context, std::vector<Product>& products);

/// The text of `publication, section, page` as people read it.
std::string cite(std::string_view publication, std::string_view section, std::string_view page);

}  // namespace sealworthy::tested
