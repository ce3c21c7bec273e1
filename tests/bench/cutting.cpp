// How many boards and sheets layouts take, against what is known of published instances. Prints tables, judges nothing.
//
//   bench_cutting FOLDER [LOOKS]    (or KW_CUTTING_INSTANCES in the environment)
//
// FOLDER holds what is there of: binpack/binpack1.txt (Falkenauer 1996, in the OR-Library's format, with the best known count),
// panels/ (orders of panels, Macedo, Alves and Valerio de Carvalho 2010, with known.csv: the bound by area) and guillotine/ (the
// value of one panel, with known.csv: proven optima). None of them is kept here.

#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <limits>
#include <map>
#include <sstream>

#include "cutting/boards.h"
#include "cutting/check.h"
#include "cutting/panel_value.h"
#include "cutting/sheets.h"

namespace {

using namespace kw::cutting;
using kw::Length;

struct Row {
    std::string name;
    std::size_t pieces = 0;
    std::int64_t found = 0;
    std::int64_t known = 0;
    std::int64_t bound = 0;
    bool proved = false;
    bool wrong = false;  // says the checker
    double ms = 0;
};

class Table {
public:
    explicit Table(const char* title, const char* known) {
        std::printf("\n%s\n%-10s %7s %9s %11s %9s %-7s %9s\n", title, "instance", "pieces", "found", known,
                    "bound", "", "ms");
    }
    void add(const Row& row) {
        print(row, row.wrong ? "WRONG" : row.proved ? "proved" : "");
        all_.pieces += row.pieces;
        all_.found += row.found;
        all_.known += row.known;
        all_.bound += row.bound;
        all_.ms += row.ms;
        proved_ += row.proved ? 1 : 0;
        slowest_ms_ = std::max(slowest_ms_, row.ms);
    }
    void print_total() {
        all_.name = "all";
        print(all_, std::to_string(proved_).c_str());
        std::printf("slowest %.1f ms\n", slowest_ms_);
    }

private:
    static void print(const Row& row, const char* proved) {
        std::printf("%-10s %7zu %9lld %11lld %9lld %-7s %9.1f\n", row.name.c_str(), row.pieces,
                    static_cast<long long>(row.found), static_cast<long long>(row.known),
                    static_cast<long long>(row.bound), proved, row.ms);
        std::fflush(stdout);
    }

    Row all_;
    int proved_ = 0;
    double slowest_ms_ = 0;
};

// Runs `solve`, and answers how long it took.
template <class Solve>
double timed_ms(const Solve& solve) {
    const auto before = std::chrono::steady_clock::now();
    solve();
    return std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - before).count();
}

// name -> the last number of its line
std::map<std::string, std::int64_t> read_known(const std::filesystem::path& path) {
    std::map<std::string, std::int64_t> known;
    std::ifstream in(path);
    std::string line;
    std::getline(in, line);
    while (std::getline(in, line))
        known[line.substr(0, line.find(','))] = std::atoll(line.c_str() + line.rfind(',') + 1);
    return known;
}

void print_boards(const std::filesystem::path& path, const Effort& effort) {
    std::ifstream in(path);
    int instances = 0;
    if (!(in >> instances)) return;
    Table table("boards", "best known");
    for (int i = 0; i < instances; ++i) {
        Row row;
        int board = 0;
        in >> row.name >> board >> row.pieces >> row.known;
        BoardJob job;
        job.boards = {{Length::millimetres(board), {}, {}, false, {}}};
        for (std::size_t p = 0; p < row.pieces; ++p) {
            int length = 0;
            in >> length;
            job.pieces.push_back({Length::millimetres(length), 1});
        }
        auto plan = decltype(plan_boards(job, effort)){};
        row.ms = timed_ms([&] { plan = plan_boards(job, effort); });
        row.wrong = !plan || laid::wrong_with(job, *plan);
        if (plan) row.found = plan->cost, row.bound = plan->least_cost, row.proved = plan->proved;
        table.add(row);
    }
    table.print_total();
}

SheetJob read_panels(const std::filesystem::path& path) {
    std::ifstream in(path);
    std::string line;
    while (std::getline(in, line) && line != "1") {}  // the words in front; 1: one instance
    int length = 0;
    int width = 0;
    int kinds = 0;
    in >> length >> width >> kinds;
    SheetJob job;
    job.sheets = {{Length::millimetres(length), Length::millimetres(width), {}, {}, false, {}}};
    for (int i = 0; i < kinds; ++i) {
        SheetPiece piece;
        in >> length >> width >> piece.count;
        piece.length = Length::millimetres(length);
        piece.width = Length::millimetres(width);
        job.pieces.push_back(piece);
    }
    return job;
}

void print_sheets(const std::filesystem::path& folder, const Effort& effort) {
    Table table("sheets", "bound, area");
    for (const auto& [name, bound] : read_known(folder / "known.csv")) {
        const SheetJob job = read_panels(folder / name);
        Row row{name, 0, 0, bound, 0, false, 0};
        for (const SheetPiece& piece : job.pieces) row.pieces += static_cast<std::size_t>(piece.count);
        auto plan = decltype(plan_sheets(job, effort)){};
        row.ms = timed_ms([&] { plan = plan_sheets(job, effort); });
        row.wrong = !plan || laid::wrong_with(job, *plan);
        if (plan) row.found = plan->cost, row.bound = plan->least_cost, row.proved = plan->proved;
        table.add(row);
    }
    table.print_total();
}

PanelJob read_panel(const std::filesystem::path& path) {
    std::ifstream in(path);
    int length = 0;
    int width = 0;
    int kinds = 0;
    in >> length >> width >> kinds;
    PanelJob job;
    job.length = Length::millimetres(length);
    job.width = Length::millimetres(width);
    for (int i = 0; i < kinds; ++i) {
        PanelPiece piece;
        in >> length >> width >> piece.value >> piece.count;
        piece.length = Length::millimetres(length);
        piece.width = Length::millimetres(width);
        job.pieces.push_back(piece);
    }
    return job;
}

void print_values(const std::filesystem::path& folder, const Effort& effort) {
    Table table("value of a panel", "optimum");
    for (const auto& [name, optimum] : read_known(folder / "known.csv")) {
        const PanelJob job = read_panel(folder / name);
        Row row{name, 0, 0, optimum, 0, false, 0};
        for (const PanelPiece& piece : job.pieces) row.pieces += static_cast<std::size_t>(piece.count);
        auto plan = decltype(most_valuable(job, effort)){};
        row.ms = timed_ms([&] { plan = most_valuable(job, effort); });
        row.wrong = !plan || laid::wrong_with(job, *plan);
        if (plan) row.found = plan->value, row.bound = plan->most_value, row.proved = plan->proved;
        table.add(row);
    }
    table.print_total();
}

}  // namespace

int main(int count, char** arguments) {
    const char* folder = count > 1 ? arguments[1] : std::getenv("KW_CUTTING_INSTANCES");
    if (!folder) {
        std::printf(
            "bench_cutting FOLDER [LOOKS]: no folder of instances is named, so nothing is measured\n");
        return 0;
    }
    Effort effort;
    if (count > 2) effort.looks = std::atoll(arguments[2]);
    const std::filesystem::path path(folder);
    print_boards(path / "binpack" / "binpack1.txt", effort);
    print_sheets(path / "panels", effort);
    print_values(path / "guillotine", effort);
}
