#pragma once
// Instances of the sequential ordering problem in TSPLIB's format (Reinelt, "TSPLIB 95"): a matrix of costs from node to node, where -1
// in row i and column j says that j must come before i. The first node is the start, the last node the end.

#include <istream>
#include <map>
#include <stdexcept>
#include <string>

#include "order/problem.h"

namespace sop {

struct Refused : std::runtime_error {
    using std::runtime_error::runtime_error;
};

using Matrix = std::vector<std::vector<std::int64_t>>;

inline Matrix read_matrix(std::istream& in) {
    std::string line;
    while (std::getline(in, line) && line.find("EDGE_WEIGHT_SECTION") == std::string::npos) {}
    std::size_t nodes = 0;
    if (!(in >> nodes) || nodes < 2 || nodes > kw::order::most_operations)
        throw Refused("there is no EDGE_WEIGHT_SECTION with a number of nodes");
    Matrix matrix(nodes, std::vector<std::int64_t>(nodes, 0));
    for (auto& row : matrix)
        for (std::int64_t& entry : row)
            if (!(in >> entry) || entry < -1 || entry > kw::order::most_seconds)
                throw Refused("the matrix is short, or has an entry that is no cost");
    return matrix;
}

// One machine with one attribute, whose values are the nodes; it stands at the first node. Operation k is node k + 1. Costs are seconds.
inline kw::order::Problem problem_of(const Matrix& matrix) {
    const std::size_t nodes = matrix.size();
    kw::order::Problem problem;
    kw::order::Attribute attribute;
    for (const auto& row : matrix) {
        attribute.change_from_to_s.emplace_back();
        for (const std::int64_t entry : row)
            attribute.change_from_to_s.back().push_back(std::max<std::int64_t>(entry, 0));
    }
    problem.machines = {{0, {attribute}, {0}}};
    for (std::size_t node = 1; node < nodes; ++node)
        problem.operations.push_back({0, {static_cast<int>(node)}, 0});
    for (std::size_t i = 1; i < nodes; ++i)
        for (std::size_t j = 1; j < nodes; ++j)
            if (i != j && matrix[i][j] == -1) problem.precedences.push_back({j - 1, i - 1});
    for (std::size_t i = 1; i + 1 < nodes; ++i) problem.precedences.push_back({i - 1, nodes - 2});
    return problem;
}

// The column `best_known` of a table with a header line, by instance.
inline std::map<std::string, std::int64_t> read_known(std::istream& in) {
    const auto fields_of = [](const std::string& line) {
        std::vector<std::string> fields{""};
        for (const char c : line) {
            if (c == ',') fields.emplace_back();
            else if (c != '\r') fields.back() += c;
        }
        return fields;
    };
    std::string line;
    std::getline(in, line);
    const std::vector<std::string> names = fields_of(line);
    std::map<std::string, std::int64_t> known;
    while (std::getline(in, line)) {
        const std::vector<std::string> fields = fields_of(line);
        for (std::size_t i = 0; i < fields.size() && i < names.size(); ++i)
            if (names[i] == "best_known") known[fields[0]] = std::stoll(fields[i]);
    }
    return known;
}

}  // namespace sop
