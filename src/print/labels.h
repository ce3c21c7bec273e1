#pragma once
// A label for each part, to be cut out and stuck on the board: what it is, its finished size and stock, and the two pencil marks
// where they belong on the board.

#include "job/work.h"
#include "print/page.h"

namespace kw::print {

// In the order of the plan's parts, in a grid with lines to cut along.
std::vector<Page> part_labels(const Work& work, Paper paper);

// A part lying before the maker with the marked face up, its bottom edge toward him where it has one: its ends and edges named,
// and the marks on it; above it its top edge with what it has of the maker's triangle. Its lower left corner is at (0, 0); `length_mm` long on paper, and with that no wider than it may be.
draw::Drawing label_view(const Part& part, const Words& words, double length_mm, double most_width_mm);

// "9 35/64− × 4 × 0.469− in": length and width as the maker reads the job, the thickness as a caliper does.
std::string finished_words(const Job& job, const PartSize& size);

}  // namespace kw::print
