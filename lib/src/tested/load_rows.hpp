#pragma once

/// Reading a product's table: one row a method, pack and jar.

#include <vector>

#include "tested/load_context.hpp"

namespace sealworthy::tested {

/// Reads a row of `rows:`; a row for several jars becomes one row each. `places` gets the position of each.
void load_row(const yaml::Node& node, Read product_read, const LoadContext& context, std::vector<Row>& rows,
              std::vector<Position>& places);

/// What one row can't show: a row told twice, a larger jar with a shorter time, a dial and a weighted row of
/// like pressure that differ in time.
void check_rows(const std::vector<Row>& rows, const std::vector<Position>& places,
                const LoadContext& context);

/// Bands without gap or overlap from 0 up, at the edges that tables have, times that do not fall and
/// pressures that rise as the tables' do.
void check_bands(const Row& row, const Option& option, Position at, const LoadContext& context);

}  // namespace sealworthy::tested
