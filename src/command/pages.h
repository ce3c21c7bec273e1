#pragma once
// The commands that write pages to print.

#include <optional>
#include <string>

#include "command/run.h"
#include "job/work.h"
#include "memory/preferences.h"
#include "print/pages_of.h"

namespace kw {

enum class PagesFormat { pdf, svg };

// By the ending of the file's name, in capitals or not; nothing where it is neither.
std::optional<PagesFormat> pages_format(const std::string& file);

struct PagesAsked {
    print::PagesOf what = print::PagesOf::cards;
    std::string file;
    std::string paper;   // "a4", "letter"; empty: by the job's unit
    LayOut layout = {};  // where they say something of it
};

// Writes the file, all of it or nothing, and says what is in it. Returns the exit status.
int write_pages(const Work& work, const Preferences& preferences, const PagesAsked& asked,
                const CommandIo& io);

}  // namespace kw
