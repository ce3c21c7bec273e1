#include "command/pages.h"

#include <algorithm>
#include <cctype>

#include "file/document.h"
#include "print/pdf.h"
#include "print/svg.h"

namespace kw {
namespace {

print::Paper paper_of(const Work& work, const std::string& asked) {
    if (!asked.empty()) return asked == "letter" ? print::Paper::letter : print::Paper::a4;
    return print::usual_paper(work.job);
}

// A font that can't be read is empty, and then refused by who prints with it.
print::PrintFonts fonts_of(const CommandIo& io) {
    const auto font = [&](const char* name) {
        return io.asset ? read_file(io.asset(name)).value_or(std::string()) : std::string();
    };
    return {font("fonts/Inter-Regular.otf"), font("fonts/Inter-SemiBold.otf")};
}

}  // namespace

std::optional<PagesFormat> pages_format(const std::string& file) {
    if (file.size() < 5) return std::nullopt;  // a name and an ending
    std::string ending = file.substr(file.size() - 4);
    std::transform(ending.begin(), ending.end(), ending.begin(),
                   [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
    if (ending == ".pdf") return PagesFormat::pdf;
    if (ending == ".svg") return PagesFormat::svg;
    return std::nullopt;
}

int write_pages(const Work& work, const Preferences& preferences, const PagesAsked& asked,
                const CommandIo& io) {
    const print::Paper paper = paper_of(work, asked.paper);
    const std::vector<print::Page> pages =
        print::pages_of(asked.what, work, asked.layout, preferences, paper);
    std::string text;
    if (pages_format(asked.file) == PagesFormat::svg) {
        text = print::write_svg(pages);
    } else {
        auto pdf = print::write_pdf(pages, fonts_of(io));
        if (!pdf) {
            io.err << asked.file << ": " << pdf.error().text({}) << "\n";
            return 1;
        }
        text = std::move(*pdf);
    }
    if (const auto saved = save_file(asked.file, text); !saved) {
        io.err << report(asked.file, {}, saved.error());
        return 1;
    }
    io.out << asked.file << ": " << pages.size() << (pages.size() == 1 ? " page, " : " pages, ")
           << (paper == print::Paper::letter ? "Letter" : "A4")
           << ". Print at 100 %, and measure the ruler at the foot.\n";
    return 0;
}

}  // namespace kw
