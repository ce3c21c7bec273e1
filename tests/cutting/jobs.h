#pragma once
// Random jobs, the same on every machine.

#include <algorithm>
#include <random>

#include "cutting/boards.h"
#include "cutting/panel_value.h"
#include "cutting/sheets.h"

namespace laid {

inline kw::Length in(std::int64_t n, std::int64_t d = 1) { return kw::Length::inches(n, d); }
inline kw::Length mm(std::int64_t n) { return kw::Length::millimetres(n); }

// std::uniform_int_distribution differs between libraries; the engine doesn't.
class Random {
public:
    explicit Random(std::uint32_t seed) : engine_(seed) {}
    int between(int low, int high) {
        return low + static_cast<int>(engine_() % static_cast<std::uint32_t>(high - low + 1));
    }
    bool chance(int percent) { return between(0, 99) < percent; }
    // Whole millimetres or 32nds of an inch.
    kw::Length length(int low_mm, int high_mm, bool is_inch) {
        return is_inch ? kw::Length::inches(between(low_mm * 32 / 25, high_mm * 32 / 26), 32)
                       : kw::Length::millimetres(between(low_mm, high_mm));
    }

private:
    std::mt19937 engine_;
};

// Boards of 600 to 1000 mm, pieces of 60 to 590.
inline kw::cutting::BoardJob random_boards(Random& random, int most_pieces) {
    kw::cutting::BoardJob job;
    const bool is_inch = random.chance(50);
    job.kerf = random.chance(20) ? kw::Length{} : random.length(2, 5, is_inch);
    const bool has_prices = random.chance(50);
    const int kinds = random.between(1, 3);
    for (int k = 0; k < kinds; ++k) {
        kw::cutting::BoardKind kind;
        kind.trim = random.chance(30) ? random.length(1, 20, is_inch) : kw::Length{};
        kind.is_offcut = k > 0 && random.chance(40);
        kind.length = random.length(kind.is_offcut ? 300 : 700, 1000, is_inch);
        if (k > 0) kind.on_hand = random.between(0, 2);
        if (has_prices && !kind.is_offcut) kind.price = random.between(3, 12);
        job.boards.push_back(kind);
    }
    for (int left = random.between(1, most_pieces); left > 0;) {
        const int count = random.between(1, std::min(left, 3));
        job.pieces.push_back({random.length(60, 590, is_inch), count});
        left -= count;
    }
    return job;
}

inline kw::cutting::Rectangle random_defect(Random& random, const kw::cutting::SheetKind& kind) {
    const auto whole_mm = [](kw::Length length) { return static_cast<int>(length.mm()); };
    return {kw::Length::millimetres(random.between(0, whole_mm(kind.length) - 10)),
            kw::Length::millimetres(random.between(0, whole_mm(kind.width) - 10)),
            kw::Length::millimetres(random.between(1, 120)), kw::Length::millimetres(random.between(1, 60))};
}

struct SheetShape {
    int most_pieces = 7;
    int most_kinds = 2;
    bool has_defects = false;
};

// Sheets of 800 to 1200 by 500 to 700 mm, pieces of 80 to 700 by 60 to 450.
inline kw::cutting::SheetJob random_sheets(Random& random, const SheetShape& shape) {
    kw::cutting::SheetJob job;
    const bool is_inch = random.chance(50);
    job.kerf = random.chance(20) ? kw::Length{} : random.length(2, 5, is_inch);
    const bool has_prices = random.chance(50);
    const int kinds = random.between(1, shape.most_kinds);
    for (int k = 0; k < kinds; ++k) {
        kw::cutting::SheetKind kind;
        kind.trim = random.chance(30) ? random.length(1, 15, is_inch) : kw::Length{};
        kind.is_offcut = k > 0 && random.chance(50);
        kind.length = random.length(kind.is_offcut ? 300 : 800, 1200, is_inch);
        kind.width = random.length(kind.is_offcut ? 200 : 500, 700, is_inch);
        if (k > 0) kind.on_hand = random.between(0, 2);
        if (has_prices && !kind.is_offcut) kind.price = random.between(3, 12);
        if (shape.has_defects && k > 0 && kind.on_hand)
            for (int d = random.between(0, 3); d > 0; --d)
                kind.defects.push_back(random_defect(random, kind));
        job.sheets.push_back(kind);
    }
    for (int left = random.between(1, shape.most_pieces); left > 0;) {
        const int count = random.between(1, std::min(left, 4));
        job.pieces.push_back(
            {random.length(80, 700, is_inch), random.length(60, 450, is_inch), count, random.chance(40)});
        left -= count;
    }
    if (random.chance(30)) job.least_offcut_length = job.least_offcut_width = random.length(20, 200, is_inch);
    return job;
}

// A panel of 30 to 60 by 20 to 40 mm, pieces a quarter to three quarters of it; values near areas, or any.
inline kw::cutting::PanelJob random_panel(Random& random, int most_pieces) {
    kw::cutting::PanelJob job;
    const int length = random.between(30, 60);
    const int width = random.between(20, 40);
    job.length = kw::Length::millimetres(length);
    job.width = kw::Length::millimetres(width);
    job.kerf = kw::Length::millimetres(random.between(0, 2));
    const bool by_area = random.chance(50);
    for (int left = random.between(1, most_pieces); left > 0;) {
        const int l = random.between(length / 5, 3 * length / 4);
        const int w = random.between(width / 5, 3 * width / 4);
        const int count = random.between(1, std::min(left, 3));
        job.pieces.push_back({kw::Length::millimetres(l), kw::Length::millimetres(w),
                              by_area ? l * w : random.between(1, 200), count, random.chance(30)});
        left -= count;
    }
    return job;
}

}  // namespace laid
