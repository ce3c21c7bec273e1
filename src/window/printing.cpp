#include "window/printing.h"

#include "file/document.h"
#include "print/pdf.h"
#include "session/say_layout.h"
#include "window/platform.h"

namespace kw::window {
namespace {

const char* ending_of(print::PagesOf what) {
    switch (what) {
        case print::PagesOf::cards: return "-cards.pdf";
        case print::PagesOf::labels: return "-labels.pdf";
        case print::PagesOf::parts: return "-parts.pdf";
        case print::PagesOf::layout: return "-layout.pdf";
        case print::PagesOf::templates: return "-templates.pdf";
    }
    return "";
}

// A font that can't be read is empty, and then refused by who prints with it.
print::PrintFonts shipped_fonts() {
    const auto font = [](const char* name) {
        return read_file(platform::asset(name)).value_or(std::string());
    };
    return {font("fonts/Inter-Regular.otf"), font("fonts/Inter-SemiBold.otf")};
}

}  // namespace

std::filesystem::path printed_beside(const std::filesystem::path& job, print::PagesOf what) {
    return job.parent_path() / (job.stem().string() + ending_of(what));
}

Printed print_beside(const Work& work, const Preferences& preferences, print::PagesOf what,
                     print::Paper paper, const std::filesystem::path& job) {
    const Locale& locale = work.job.locale;
    const LayOut layout = print::needs_layout(what) ? lay_out(work.job, work.plan, work.standing) : LayOut{};
    if (what == print::PagesOf::layout && layout.stocks.empty())
        return {false, say_nothing_laid_out(work.job, layout)};
    const auto pages = print::pages_of(what, work, layout, preferences, paper);
    const std::filesystem::path file = printed_beside(job, what);
    const auto pdf = print::write_pdf(pages, shipped_fonts());
    if (!pdf) return {false, pdf.error().text(locale)};
    if (const auto saved = save_file(file, *pdf); !saved)
        return {false, file.string() + ": " + saved.error().why.text(locale)};
    return {true, locale.words().counted("print.written", static_cast<long long>(pages.size()), file.string(),
                                         paper == print::Paper::letter ? "Letter" : "A4")};
}

}  // namespace kw::window
