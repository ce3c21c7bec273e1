#pragma once
// What to do with a drawer in the clamps and with its face, in the maker's words.

#include <string>
#include <vector>

#include "job/assembly.h"

namespace kw {

struct SaidOfAssembly {
    std::string expected;          // "Each diagonal of a square box is 15 1/4 in"
    std::vector<std::string> box;  // what the diagonals say and what to do; empty: not both are read
    bool is_square = false;
    bool is_to_be_pushed = false;
    bool is_misread = false;  // no four boards of this size can read so
    std::vector<std::string>
        slides;  // which end to raise or lower, and what to put behind; or that they run true; empty: not read
    bool are_slides_true = false;
    bool are_slides_to_be_set = false;
    std::vector<std::string> face;  // how to move it, one move each; empty: no gap was read
    bool is_to_be_moved = false;    // by one of them
    bool is_hung =
        false;  // as it should be, and enough was read to say so: beside it, and above or below at both ends
};

SaidOfAssembly say_assembly(const Job& job, const AssemblyResult& result);

// "left, at the top"; "how far its left end stands out": of a reading by its name in the file.
std::string gap_word(const Words& words, std::string_view name);

}  // namespace kw
