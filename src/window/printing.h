#pragma once
// Pages of a job written to a file beside it.

#include <filesystem>
#include <string>

#include "print/pages_of.h"

namespace kw::window {

// "seeds.json" has its cards in "seeds-cards.pdf".
std::filesystem::path printed_beside(const std::filesystem::path& job, print::PagesOf what);

struct Printed {
    bool is_written = false;
    std::string said;  // what is in the file and where, or why there is none; in the job's language
};

// All of the file or nothing. Parts are laid out for the pages that say something of it.
Printed print_beside(const Work& work, const Preferences& preferences, print::PagesOf what,
                     print::Paper paper, const std::filesystem::path& job);

}  // namespace kw::window
