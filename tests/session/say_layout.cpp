// What a layout is said to be made of.
#include "session/say_layout.h"

#include <doctest/doctest.h>

using namespace kw;

namespace {

// One piece of each size.
std::string said(StockKind kind, std::vector<StockSize> sizes, Language language = Language::english) {
    Job job;
    job.locale.language = language;
    LaidStock laid;
    laid.stock = "oak";
    laid.is_in_sheets = sizes.front().width.has_value();
    for (std::size_t size = 0; size < sizes.size(); ++size) laid.pieces.push_back({size, {}, {}, {}});
    Stock stock;
    stock.name = laid.stock;
    stock.kind = kind;
    stock.sizes = std::move(sizes);
    job.stock.push_back(std::move(stock));
    const std::string all = say_layout(job, laid);
    return all.substr(0, all.find(':'));
}

StockSize size_of(std::optional<Length> width, bool is_offcut = false) {
    StockSize size;
    size.length = Length::inches(96);
    size.width = width;
    size.is_offcut = is_offcut;
    return size;
}

}  // namespace

TEST_CASE("solid wood is had in boards, a panel in sheets, and with an offcut among them they are pieces") {
    const Length wide = Length::inches(48);
    const StockSize sheet = size_of(wide), board = size_of(std::nullopt);
    CHECK(said(StockKind::plywood, {sheet, sheet}) == "2 sheets");
    CHECK(said(StockKind::plywood, {sheet}, Language::german) == "1 Platte");
    CHECK(said(StockKind::solid, {sheet, sheet}) == "2 boards");
    CHECK(said(StockKind::solid, {board, board, board}) == "3 boards");
    CHECK(said(StockKind::solid, {board, board}, Language::german) == "2 Bretter");
    CHECK(said(StockKind::plywood, {board}) == "1 board");
    CHECK(said(StockKind::solid, {board, board, size_of(std::nullopt, true)}) == "3 pieces");
    CHECK(said(StockKind::plywood, {sheet, size_of(wide, true)}) == "2 pieces");
    CHECK(said(StockKind::plywood, {sheet, size_of(wide, true)}, Language::german) == "2 Stück");
    CHECK(said(StockKind::plywood, {size_of(wide, true)}) == "1 piece");
}
