// The fewest and the cheapest boards, against a general solver: GLPK, given the job as a mixed-integer linear program (Kantorovich's, Manage.
// Sci. 6, 1960: each piece on one board, and no more on a board than it holds).
#include <doctest/doctest.h>
#include <glpk.h>

#include <cmath>
#include <memory>

#include "check.h"
#include "cutting/boards.h"
#include "effort.h"
#include "jobs.h"

using namespace kw;
using namespace kw::cutting;

namespace {

struct DeleteProgram {
    void operator()(glp_prob* program) const { glp_delete_prob(program); }
};

struct OneBoard {
    std::size_t kind = 0;
    double room_mm = 0;
    double cost = 0;
};

// Each board that there may be by itself, in as many copies as there are pieces at most.
std::vector<OneBoard> all_boards(const BoardJob& job, int pieces) {
    bool is_in_money = true;
    for (const BoardKind& kind : job.boards) is_in_money = is_in_money && (kind.is_offcut || kind.price);
    std::vector<OneBoard> boards;
    for (std::size_t k = 0; k < job.boards.size(); ++k) {
        const BoardKind& kind = job.boards[k];
        for (int i = 0; i < std::min(pieces, kind.on_hand.value_or(pieces)); ++i) {
            const double price = is_in_money ? static_cast<double>(kind.price.value_or(0)) : 1;
            boards.push_back({k, (kind.length - 2 * kind.trim + job.kerf).mm(),
                              kind.is_offcut && !is_in_money ? 0 : price});
        }
    }
    return boards;
}

class Program {
public:
    explicit Program(const BoardJob& job) : glpk_(glp_create_prob()) {
        std::vector<double> pieces;
        for (const BoardPiece& piece : job.pieces)
            for (int i = 0; i < piece.count; ++i) pieces.push_back((piece.length + job.kerf).mm());
        const std::vector<OneBoard> boards = all_boards(job, static_cast<int>(pieces.size()));
        glp_term_out(GLP_OFF);
        glp_set_obj_dir(glpk_.get(), GLP_MIN);
        for (const OneBoard& board : boards) board_columns_.push_back(add_column(board.cost));
        std::vector<std::vector<int>> on(pieces.size());  // by piece, by board: whether it lies there
        for (std::vector<int>& columns : on)
            for (std::size_t b = 0; b < boards.size(); ++b) columns.push_back(add_column(0));
        for (const std::vector<int>& columns : on)
            add_row(columns, std::vector<double>(columns.size(), 1), GLP_FX, 1);
        for (std::size_t b = 0; b < boards.size(); ++b) {
            std::vector<int> columns{board_columns_[b]};
            std::vector<double> factors{-boards[b].room_mm};
            for (std::size_t p = 0; p < pieces.size(); ++p) {
                columns.push_back(on[p][b]);
                factors.push_back(pieces[p]);
            }
            add_row(columns, factors, GLP_UP, 1e-6);
            // Of boards that are alike, the first are taken: it changes no cost, and GLPK needs not try them all.
            if (b > 0 && boards[b].kind == boards[b - 1].kind)
                add_row({board_columns_[b], board_columns_[b - 1]}, {1, -1}, GLP_UP, 0);
        }
    }

    // Nothing: there is not stock enough.
    std::optional<std::int64_t> least_cost() const {
        glp_iocp options;
        glp_init_iocp(&options);
        options.presolve = GLP_ON;
        const int failed = glp_intopt(glpk_.get(), &options);
        if (failed == GLP_ENOPFS) return std::nullopt;
        REQUIRE(failed == 0);
        if (glp_mip_status(glpk_.get()) == GLP_NOFEAS) return std::nullopt;
        REQUIRE(glp_mip_status(glpk_.get()) == GLP_OPT);
        return std::llround(glp_mip_obj_val(glpk_.get()));
    }

private:
    int add_column(double cost) {
        const int column = glp_add_cols(glpk_.get(), 1);
        glp_set_col_kind(glpk_.get(), column, GLP_BV);
        glp_set_obj_coef(glpk_.get(), column, cost);
        return column;
    }
    // GLPK counts terms from 1.
    void add_row(std::vector<int> columns, std::vector<double> factors, int kind, double bound) {
        const int row = glp_add_rows(glpk_.get(), 1);
        glp_set_row_bnds(glpk_.get(), row, kind, bound, bound);
        columns.insert(columns.begin(), 0);
        factors.insert(factors.begin(), 0);
        glp_set_mat_row(glpk_.get(), row, static_cast<int>(columns.size()) - 1, columns.data(),
                        factors.data());
    }

    std::unique_ptr<glp_prob, DeleteProgram> glpk_;
    std::vector<int> board_columns_;
};

}  // namespace

TEST_CASE("GLPK finds no cheaper boards, and the same stock too little: 1 to 6 pieces") {
    laid::Random random(71);
    const int jobs = tests::cases(150);
    int enough = 0;
    for (int i = 0; i < jobs; ++i) {
        CAPTURE(i);
        BoardJob job = laid::random_boards(random, 6);
        if (i % 2 == 0) job.boards.front().on_hand = random.between(0, 2);
        const std::optional<std::int64_t> least = Program(job).least_cost();
        const auto plan = plan_boards(job);
        REQUIRE(plan.has_value() == least.has_value());
        if (!plan) continue;
        ++enough;
        CHECK(laid::wrong_with(job, *plan) == std::nullopt);
        CHECK(plan->proved);
        CHECK(plan->cost == *least);
    }
    CHECK(enough > jobs / 3);
    CHECK(enough < jobs);
}
