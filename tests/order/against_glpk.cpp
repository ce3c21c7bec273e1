// The least time, against a general solver: GLPK, given the problem as a mixed-integer linear program (tests/order/milp.h).

#include <doctest/doctest.h>
#include <glpk.h>

#include <cmath>
#include <memory>

#include "batch_work.h"
#include "brute/brute.h"
#include "effort.h"
#include "milp.h"
#include "order/cost.h"
#include "order/solve.h"

using namespace kw::order;

namespace {

using Seconds = std::optional<std::int64_t>;  // nothing: there is no order

struct Delete {
    void operator()(glp_prob* problem) const { glp_delete_prob(problem); }
};
using Glpk = std::unique_ptr<glp_prob, Delete>;

// GLPK counts rows, columns and terms from 1.
int counted(std::size_t index) { return static_cast<int>(index) + 1; }

void add_row(glp_prob* glpk, const ord::Milp::Row& row) {
    std::vector<int> columns{0};
    std::vector<double> factors{0};
    for (const auto& [column, factor] : row.terms) {
        columns.push_back(counted(column));
        factors.push_back(factor);
    }
    const int kind = row.sense == ord::Milp::Sense::at_most    ? GLP_UP
                     : row.sense == ord::Milp::Sense::at_least ? GLP_LO
                                                               : GLP_FX;
    const int number = glp_add_rows(glpk, 1);
    glp_set_row_bnds(glpk, number, kind, row.bound, row.bound);
    glp_set_mat_row(glpk, number, static_cast<int>(row.terms.size()), columns.data(), factors.data());
}

Glpk in_glpk(const ord::Milp& milp) {
    glp_term_out(GLP_OFF);
    Glpk glpk(glp_create_prob());
    glp_set_obj_dir(glpk.get(), GLP_MIN);
    glp_add_cols(glpk.get(), static_cast<int>(milp.columns.size()));
    for (std::size_t c = 0; c < milp.columns.size(); ++c) {
        glp_set_obj_coef(glpk.get(), counted(c), static_cast<double>(milp.columns[c].seconds));
        glp_set_col_kind(glpk.get(), counted(c), GLP_BV);
    }
    for (const ord::Milp::Row& row : milp.rows) add_row(glpk.get(), row);
    return glpk;
}

Seconds least_by_glpk(const ord::Milp& milp) {
    const Glpk glpk = in_glpk(milp);
    glp_iocp options;
    glp_init_iocp(&options);
    options.presolve = GLP_ON;
    options.br_tech =
        GLP_BR_FFV;  // on the first places first: three times as fast here as what GLPK does by itself
    const int failed = glp_intopt(glpk.get(), &options);
    if (failed == GLP_ENOPFS) return std::nullopt;
    REQUIRE(failed == 0);
    const int status = glp_mip_status(glpk.get());
    if (status == GLP_NOFEAS) return std::nullopt;
    REQUIRE(status == GLP_OPT);
    return milp.always_s + std::llround(glp_mip_obj_val(glpk.get()));
}

// The first columns of the program say which operation comes at which place.
Seconds of_order_by_glpk(ord::Milp milp, const std::vector<std::size_t>& order) {
    for (std::size_t place = 0; place < order.size(); ++place)
        milp.rows.push_back({{{place * order.size() + order[place], 1}}, ord::Milp::Sense::equal, 1});
    return least_by_glpk(milp);
}

bool is_agreed(const Problem& problem) {
    REQUIRE_FALSE(validate(problem));
    const Seconds least = least_by_glpk(ord::milp_of(problem));
    const Result result = solve(problem);
    CHECK(result.status == (least ? Status::proved : Status::impossible));
    if (least) CHECK(result.seconds == *least);
    return least.has_value();
}

}  // namespace

TEST_CASE("GLPK counts for any order what it costs, and finds the same orders against the rules") {
    ord::Random random(41);
    int kept = 0;
    for (int i = 0; i < 500; ++i) {
        CAPTURE(i);
        ord::Kind kind{3 + random.below(4), 2, 3, 3, 25, 8, random.below(3), i % 2 == 1, true};
        const Problem problem = ord::random_problem(kind, random);
        const std::vector<std::size_t> order = ord::shuffled(kind.operations, random);
        const Seconds counted = of_order_by_glpk(ord::milp_of(problem), order);
        CHECK(counted.has_value() == !first_breach(problem, order));
        if (counted) CHECK(*counted == price(problem, order).seconds);
        kept += counted ? 1 : 0;
    }
    CHECK(kept > 100);
    CHECK(kept < 400);
}

TEST_CASE("GLPK finds no quicker order, and the same problems impossible: 1 to 8 operations") {
    ord::Random random(42);
    const int problems = kw::tests::cases(300);
    int possible = 0;
    for (int i = 0; i < problems; ++i) {
        CAPTURE(i);
        possible += is_agreed(ord::random_problem(ord::random_kind(random, i % 2 == 1, 8), random));
    }
    CHECK(possible > problems * 2 / 3);
    CHECK(possible < problems);
}

TEST_CASE("GLPK finds no quicker order where not every order can be tried: 9 and 10 operations") {
    ord::Random random(43);
    for (int i = 0; i < kw::tests::cases(24); ++i) {
        CAPTURE(i);
        ord::Kind kind = ord::random_kind(random, i % 2 == 1, 1);
        kind.operations = i < 18 ? 9 : 10;
        is_agreed(ord::random_problem(kind, random));
    }
}

TEST_CASE("GLPK finds the same problems impossible where groups and precedences contradict each other") {
    ord::Random random(44);
    const int problems = kw::tests::cases(150);
    int possible = 0;
    for (int i = 0; i < problems; ++i) {
        CAPTURE(i);
        ord::Kind kind{5 + random.below(4), 2, 3, 3, 20, 30, 3, i % 2 == 1, true};
        Problem problem = ord::random_problem(kind, random);
        // Rarely a cycle, be it of one operation.
        if (random.chance(15))
            problem.precedences.push_back({random.below(kind.operations), random.below(kind.operations)});
        possible += is_agreed(problem);
    }
    CHECK(possible > problems / 5);
    CHECK(possible < problems * 4 / 5);
}

TEST_CASE("GLPK finds no quicker order for a drawer or two") {
    ord::Random random(45);
    for (std::size_t i = 0; i < std::size_t(kw::tests::cases(40)); ++i) {
        CAPTURE(i);
        const ord::Batch shape =
            i % 2 == 0 ? ord::Batch{1, 7 + i % 5, 6, 1} : ord::Batch{2, 3 + i % 3, 4, i % 4 == 1 ? 1 : 2};
        CHECK(is_agreed(ord::batch_problem(shape, random)));
    }
}
