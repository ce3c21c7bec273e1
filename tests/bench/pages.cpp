// How long pages to print take, beside the planning of the same job: medians in milliseconds. Prints a table, judges nothing.

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <vector>

#include "print/cards.h"
#include "print/pdf.h"
#include "print/svg.h"
#include "sample_job.h"
#include "session/session.h"

namespace {

template <class Work>
double median_ms(Work work) {
    constexpr int rounds = 9;
    std::vector<double> ms;
    for (int i = 0; i < rounds; ++i) {
        const auto before = std::chrono::steady_clock::now();
        work();
        ms.push_back(
            std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - before).count());
    }
    std::sort(ms.begin(), ms.end());
    return ms[rounds / 2];
}

void measure(const char* name, int times_as_many) {
    kw::Json job = kw::tests::demo_json();
    for (kw::Json& drawer : job["drawers"]) drawer["count"] = drawer.value("count", 1) * times_as_many;
    const kw::Session session = kw::open_session(job);
    if (!session.work) return;
    const kw::print::PrintFonts fonts{kw::tests::text_in(KW_ASSET_DIR "/fonts/Inter-Regular.otf"),
                                      kw::tests::text_in(KW_ASSET_DIR "/fonts/Inter-SemiBold.otf")};
    const auto pages = kw::print::setup_cards(*session.work, kw::print::Paper::a4);
    std::printf("%-22s %6zu %10.1f %10.1f %10.1f %10.1f\n", name, pages.size(),
                median_ms([&] { kw::open_session(job); }),
                median_ms([&] { kw::print::setup_cards(*session.work, kw::print::Paper::a4); }),
                median_ms([&] { kw::print::write_pdf(pages, fonts).has_value(); }),
                median_ms([&] { kw::print::write_svg(pages); }));
}

}  // namespace

int main() {
    std::printf("%-22s %6s %10s %10s %10s %10s\n", "cards of", "pages", "plan ms", "lay out", "pdf", "svg");
    measure("the demo job", 1);
    measure("ten times as many", 10);
}
