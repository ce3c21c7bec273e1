// Our order of least time beside general solvers on the same problems: CBC, with the mixed-integer program of tests/order/milp.h, and
// Gecode, with the MiniZinc model of minizinc_text.h. Checks that all that finish agree, and prints a table.
//
//     bench_solvers [PROBLEMS [LIMIT_S]]    so many problems of each kind and size (2), and so long for each solve (60 s)
//
// A solver's time is that of its process, less what it takes with a problem of one unknown. MiniZinc's translation is not counted. Ours
// is the median of repeated solves. Problems without an order are passed over. A solve that was not finished counts as
// the limit, which ">" says; a solver that finishes none of a size is not asked for more of that kind.

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <optional>

#include "brute/brute.h"
#include "lp_text.h"
#include "minizinc_text.h"
#include "order/batch_work.h"
#include "order/solve.h"
#include "process.h"

namespace {

using kw::order::Problem;

double median(std::vector<double> values) {
    std::sort(values.begin(), values.end());
    return values[values.size() / 2];
}

struct Solved {
    double ms = 0;
    std::optional<std::int64_t> seconds;  // the least time, where it finished
};

// ---- the solvers ------------------------------------------------------------------------------------------------------------

class Solver {
public:
    Solver(const bench::Folder& folder, int limit_s) : folder_(folder), limit_s_(limit_s) {}
    virtual ~Solver() = default;
    Solver(const Solver&) = delete;
    Solver& operator=(const Solver&) = delete;

    virtual const char* name() const = 0;
    virtual bool is_there() const = 0;
    virtual Solved solve(const Problem& problem) = 0;

    double start_ms = 0;  // with a problem of one unknown

protected:
    double run(const std::string& command) const {
        return folder_.run("timeout " + std::to_string(2 * limit_s_) + " " + command) - start_ms;
    }
    const bench::Folder& folder() const { return folder_; }
    int limit_s() const { return limit_s_; }
    void measure_start(const std::string& command) {
        std::vector<double> ms;
        for (int i = 0; i < 15; ++i) ms.push_back(run(command));
        start_ms = median(ms);
    }

private:
    const bench::Folder& folder_;
    int limit_s_ = 0;
};

class Cbc final : public Solver {
public:
    Cbc(const bench::Folder& folder, int limit_s) : Solver(folder, limit_s) {
        folder.write("order.lp", "Minimize\n seconds: x\nSubject To\n r: x >= 1\nBinaries\n x\nEnd\n");
        folder.write("order.csv", "name,priority\nx,1\n");
        if (is_there()) measure_start(command());
    }
    const char* name() const override { return "CBC"; }
    bool is_there() const override { return bench::is_installed("cbc"); }

    Solved solve(const Problem& problem) override {
        const ord::Milp milp = ord::milp_of(problem);
        folder().write("order.lp", bench::lp_text(milp));
        folder().write("order.csv", bench::priority_text(milp));
        folder().remove("order.sol");
        Solved solved{run(command()), {}};
        double seconds = 0;
        if (std::sscanf(folder().read("order.sol").c_str(), "Optimal - objective value %lf", &seconds) == 1)
            solved.seconds = milp.always_s + std::llround(seconds);
        return solved;
    }

private:
    // Told to fill the first places first, and to leave out cutting planes, it is about ten times as fast here as by itself.
    std::string command() const {
        return "cbc order.lp -timeMode elapsed -sec " + std::to_string(limit_s()) +
               " -cuts off -priorityIn order.csv -solve -solution order.sol";
    }
};

class Gecode final : public Solver {
public:
    Gecode(const bench::Folder& folder, int limit_s) : Solver(folder, limit_s) {
        folder.write("order.mzn", bench::minizinc_model);
    }
    const char* name() const override { return "Gecode"; }
    bool is_there() const override {
        return bench::is_installed("minizinc") && bench::is_installed("fzn-gecode");
    }

    Solved solve(const Problem& problem) override {
        folder().write("order.dzn", bench::minizinc_data(problem));
        folder().remove("order.fzn");
        // With Debian's "gecode" folder this MiniZinc would take Gecode's own constraints apart.
        folder().run("minizinc -c --solver gecode -G gecode_presolver order.mzn order.dzn");
        if (folder().read("order.fzn").empty())
            std::printf("MiniZinc: %s\n", folder().read("printed").c_str());
        Solved solved{run(command()), {}};
        const std::string printed = folder().read("printed");
        // What it says of its own time leaves out its start, which is longer than some of these searches.
        if (printed.find("solveTime=") != std::string::npos)
            solved.ms = 1000 * (told(printed, "initTime=") + told(printed, "solveTime="));
        if (printed.find("==========") != std::string::npos)
            solved.seconds = ord::Brute(problem).seconds_of(order_in(printed));
        return solved;
    }

private:
    std::string command() const {
        return "fzn-gecode -s -time " + std::to_string(1000 * limit_s()) + " order.fzn";
    }

    static double told(const std::string& printed, const std::string& name) {
        const std::size_t at = printed.find(name);
        return at == std::string::npos ? 0.0 : std::strtod(printed.c_str() + at + name.size(), nullptr);
    }

    // at = array1d(1..3, [2, 1, 3]);
    static std::vector<std::size_t> order_in(const std::string& printed) {
        std::vector<std::size_t> order;
        std::istringstream numbers(printed.substr(std::min(printed.find('['), printed.size() - 1) + 1));
        char comma = ',';
        for (std::size_t number = 0; comma == ',' && numbers >> number >> comma;) order.push_back(number - 1);
        return order;
    }
};

Solved ours(const Problem& problem) {
    Solved solved;
    std::vector<double> ms;
    double all_ms = 0;
    while (all_ms < 100 || ms.size() < 5) {
        const auto before = std::chrono::steady_clock::now();
        const kw::order::Result result = kw::order::solve(problem);
        const std::chrono::duration<double, std::milli> took = std::chrono::steady_clock::now() - before;
        ms.push_back(took.count());
        all_ms += took.count();
        if (result.status == kw::order::Status::proved) solved.seconds = result.seconds;
    }
    solved.ms = median(ms);
    return solved;
}

// ---- the table --------------------------------------------------------------------------------------------------------------

enum class Work { drawers, random, wild };

const char* name_of(Work work) {
    return work == Work::drawers ? "two drawers" : work == Work::random ? "random" : "random, no sense in it";
}

Problem make(Work work, std::size_t operations, ord::Random& random) {
    if (work == Work::drawers) return ord::batch_problem({2, operations / 2, 6, 2}, random);
    return ord::random_problem({operations, 2, 3, 3, 25, 15, 1, work == Work::wild, true}, random);
}

std::vector<Problem> problems_of(Work work, std::size_t operations, std::size_t count) {
    std::vector<Problem> problems;
    for (std::uint32_t seed = 1; problems.size() < count; ++seed) {
        ord::Random random(seed);
        Problem problem = make(work, operations, random);
        if (kw::order::solve(problem).status != kw::order::Status::impossible)
            problems.push_back(std::move(problem));
    }
    return problems;
}

struct Column {
    std::vector<double> ms{};
    std::vector<double> ratio{};
    std::size_t finished = 0;

    void print() const {
        if (ms.empty()) {
            std::printf(" %11s %10s %7s", "-", "-", "-");
            return;
        }
        // With more than half of them finished, the median is one that was.
        const char* sign = finished * 2 > ms.size() ? " " : ">";
        std::printf(" %s%10.1f %s%9.0f %3zu/%-3zu", sign, median(ms), sign, median(ratio), finished,
                    ms.size());
    }
};

class Table {
public:
    explicit Table(std::vector<Solver*> solvers) : solvers_(std::move(solvers)) {}

    void print_head() const {
        std::printf("%-23s %4s %10s", "work", "ops", "ours ms");
        for (const Solver* solver : solvers_)
            std::printf(" %8s ms %10s %7s", solver->name(), "/ ours", "done");
        std::printf("\n");
    }

    void run(Work work, std::size_t problems) {
        std::vector<bool> is_asked(solvers_.size(), true);
        for (const std::size_t operations : {10U, 12U, 16U, 20U}) {
            std::vector<double> our_ms;
            std::vector<Column> columns(solvers_.size());
            for (const Problem& problem : problems_of(work, operations, problems)) {
                const Solved own = ours(problem);
                our_ms.push_back(own.ms);
                for (std::size_t s = 0; s < solvers_.size(); ++s)
                    if (is_asked[s]) add(columns[s], *solvers_[s], problem, own);
            }
            std::printf("%-23s %4zu %10.3f", name_of(work), operations, median(our_ms));
            for (std::size_t s = 0; s < solvers_.size(); ++s) {
                columns[s].print();
                is_asked[s] = columns[s].finished > 0;
            }
            std::printf("\n");
            std::fflush(stdout);
        }
    }

    bool all_agreed() const { return agreed_; }

private:
    void add(Column& column, Solver& solver, const Problem& problem, const Solved& own) {
        const Solved theirs = solver.solve(problem);
        column.ms.push_back(theirs.ms);
        column.ratio.push_back(theirs.ms / own.ms);
        column.finished += theirs.seconds ? 1 : 0;
        if (!theirs.seconds || theirs.seconds == own.seconds) return;
        agreed_ = false;
        std::printf("problem %zu of this line: %s finds %lld s, we %lld s\n", column.ms.size(), solver.name(),
                    static_cast<long long>(*theirs.seconds),
                    static_cast<long long>(own.seconds.value_or(-1)));
    }

    std::vector<Solver*> solvers_;
    bool agreed_ = true;
};

}  // namespace

int main(int count, char** arguments) {
    const int problems = count > 1 ? std::max(1, std::atoi(arguments[1])) : 2;
    const int limit_s = count > 2 ? std::max(1, std::atoi(arguments[2])) : 60;
    const bench::Folder folder;
    Cbc cbc(folder, limit_s);
    Gecode gecode(folder, limit_s);
    std::vector<Solver*> there;
    for (Solver* solver : std::initializer_list<Solver*>{&cbc, &gecode}) {
        if (solver->is_there()) there.push_back(solver);
        else std::printf("%s is not installed: ./dev setup solvers\n", solver->name());
    }
    for (const Solver* solver : there) {
        if (solver->start_ms == 0) continue;
        std::printf("%s takes %.1f ms to start, which is taken off\n", solver->name(), solver->start_ms);
    }
    Table table(there);
    table.print_head();
    for (const Work work : {Work::drawers, Work::random, Work::wild})
        table.run(work, static_cast<std::size_t>(problems));
    std::printf(table.all_agreed() ? "all that finished agree\n" : "NOT ALL AGREE\n");
    return table.all_agreed() ? 0 : 1;
}
