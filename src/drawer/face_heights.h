#pragma once
// The heights of a bank's faces by its rule. Private to this folder.

#include "drawer/bank.h"

namespace kw {

struct HeightsOfFaces {
    std::vector<Length> all;  // top to bottom
    Length step;              // of graduated heights
    Length left_over;         // what did not divide out
};

// `for_faces`: what they share. `openings`: of all rows, where they are known. See make_bank.
tl::expected<HeightsOfFaces, Refusal> face_heights(const BankAsk& ask, Length for_faces,
                                                   const std::vector<Length>& openings);

}  // namespace kw
