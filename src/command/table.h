#pragma once
// Columns of text, aligned as one would write them on a card for the wall.

#include <string>
#include <vector>

namespace kw {

enum class Align { left, right };

class Table {
public:
    explicit Table(std::vector<Align> columns) : columns_(std::move(columns)) {}

    void row(std::vector<std::string> cells) { rows_.push_back(std::move(cells)); }
    // Two spaces between columns, `indent` before the first; no spaces at line ends.
    std::string text(std::size_t indent = 2) const;

private:
    std::vector<Align> columns_;
    std::vector<std::vector<std::string>> rows_;
};

// Characters as they stand beside each other, not bytes.
std::size_t width_of(const std::string& text);

}  // namespace kw
