// What stands where on the pages, of random jobs in both units, on both papers, in two languages, with short names and long ones.

#include <algorithm>

#include "draw/slide_template.h"
#include "effort.h"
#include "job/slide_notes.h"
#include "print/job_to_print.h"
#include "print/marks.h"
#include "print/sheet.h"
#include "session/say_layout.h"
#include "session/setup_said.h"

using namespace kw::print;
using kw::Language;

namespace {

constexpr double hair_mm = 0.01;

Area around(const std::vector<std::vector<Spot>>& lines, double pad_mm) {
    Area area{1e9, 1e9, -1e9, -1e9};
    for (const auto& line : lines)
        for (const Spot& p : line)
            area = {std::min(area.left_mm, p.x_mm - pad_mm), std::min(area.top_mm, p.y_mm - pad_mm),
                    std::max(area.right_mm, p.x_mm + pad_mm), std::max(area.bottom_mm, p.y_mm + pad_mm)};
    return area;
}

Area reach_of(const Mark& mark) {
    if (const auto* text = std::get_if<SetText>(&mark)) return area_of(*text);
    if (const auto* area = std::get_if<FilledArea>(&mark)) return around(area->rings, 0);
    const auto& lines = std::get<StrokedLines>(mark);
    return around(lines.lines, lines.width_mm / 2);
}

bool is_within(const Area& a, const Area& room) {
    return a.left_mm >= room.left_mm - hair_mm && a.top_mm >= room.top_mm - hair_mm &&
           a.right_mm <= room.right_mm + hair_mm && a.bottom_mm <= room.bottom_mm + hair_mm;
}

bool overlap(const Area& a, const Area& b) {
    constexpr double touch_mm = 0.1;
    return std::min(a.right_mm, b.right_mm) - std::max(a.left_mm, b.left_mm) > touch_mm &&
           std::min(a.bottom_mm, b.bottom_mm) - std::max(a.top_mm, b.top_mm) > touch_mm;
}

void check_page(const Page& page) {
    CAPTURE(page.title);
    const Area room = inside_margins(page.paper);
    std::vector<SetText> texts;
    for (const Mark& mark : marks_of(page)) {
        if (const auto* text = std::get_if<SetText>(&mark)) {
            CAPTURE(text->text);
            CHECK(is_within(reach_of(mark), room));
            texts.push_back(*text);
        } else {
            CHECK(is_within(reach_of(mark), room));
        }
    }
    for (std::size_t i = 0; i < texts.size(); ++i)
        for (std::size_t k = 0; k < i; ++k) {
            if (!overlap(area_of(texts[i]), area_of(texts[k]))) continue;
            CAPTURE(texts[i].text);
            CAPTURE(texts[k].text);
            CHECK_FALSE(overlap(area_of(texts[i]), area_of(texts[k])));
        }
}

template <class Check>
void for_jobs(unsigned first, unsigned last, Check check) {
    const auto count = static_cast<unsigned>(kw::tests::cases(static_cast<int>(last - first) + 1));
    for (unsigned seed = first; seed < first + count; ++seed) {
        CAPTURE(seed);
        kw::Json job = to_print::with_sizes(to_print::random_json(seed));
        if (seed % 2 == 0) job = to_print::with_long_names(std::move(job));
        const Language language = seed % 3 == 0 ? Language::german : Language::english;
        const auto work = to_print::work_of(job, language);
        if (work) check(*work, seed % 4 < 2 ? Paper::a4 : Paper::letter);
    }
}

std::vector<std::string> lines_on(const std::vector<Page>& pages) {
    std::vector<std::string> lines;
    for (const Page& page : pages)
        for (const Item& item : page.items)
            if (const auto* text = std::get_if<Text>(&item)) lines.push_back(text->text);
    return lines;
}

}  // namespace

TEST_CASE("whatever the job, nothing lies outside the margins, and no word on another") {
    int works = 0;
    for_jobs(1, 24, [&](const kw::Work& work, Paper paper) {
        ++works;
        for (const auto& pages : to_print::all_pages(work, paper))
            for (const Page& page : pages) check_page(page);
    });
    CHECK(works >= std::max(1, kw::tests::cases(24) - 4));  // some can't be made
}

TEST_CASE("every setup is on exactly one card, in the order of the work") {
    for_jobs(30, 40, [&](const kw::Work& work, Paper paper) {
        const auto lines = lines_on(setup_cards(work, paper));
        const kw::Words& words = work.job.locale.words();
        const std::size_t count = work.plan.sequence.size();
        std::size_t next = 0;
        for (const std::string& line : lines)
            if (next < count && line == words("print.step_of", next + 1, count)) ++next;
        CHECK(next == count);
        for (std::size_t step = 1; step <= count; ++step)
            CHECK(std::count(lines.begin(), lines.end(), words("print.step_of", step, count)) == 1);
    });
}

TEST_CASE("a box is to be ticked for every end that goes through") {
    for_jobs(41, 46, [&](const kw::Work& work, Paper paper) {
        std::size_t ends = 0, boxes = 0;
        for (const kw::Setup& setup : work.plan.setups) ends += setup.passes.size();
        for (const Page& page : setup_cards(work, paper))
            for (const Item& item : page.items) {
                const auto* path = std::get_if<Path>(&item);
                if (path && path->closed && path->points[1].x_mm - path->points[0].x_mm < 3.5) ++boxes;
            }
        CHECK(boxes == ends);
    });
}

TEST_CASE("there is a label for each part, and the parts list counts them all") {
    for_jobs(47, 52, [&](const kw::Work& work, Paper paper) {
        int counted = 0;
        for (const EqualParts& equal : equal_parts(work.plan)) counted += equal.count;
        CHECK(counted == static_cast<int>(work.plan.parts.size()));
        std::size_t pictures = 0;
        for (const Page& page : part_labels(work, paper))
            pictures += static_cast<std::size_t>(
                std::count_if(page.items.begin(), page.items.end(),
                              [](const Item& i) { return std::holds_alternative<Picture>(i); }));
        CHECK(pictures == work.plan.parts.size());
    });
}

TEST_CASE(
    "each part is on one page of the layout, and there is a box for each cut, each setting and what is to be "
    "bought") {
    for_jobs(53, 60, [&](const kw::Work& work, Paper paper) {
        const kw::LayOut layout = kw::lay_out(work.job, work.plan, work.standing, to_print::quick());
        REQUIRE(layout.without_size.empty());
        const auto pages = layout_pages(work, layout, paper);
        const auto lines = lines_on(pages);
        std::size_t boxes_wanted = 0, parts = 0, boxes = 0;
        for (const kw::LaidStock& laid : layout.stocks) {
            REQUIRE_FALSE(laid.cannot);
            boxes_wanted += kw::say_to_buy(work.job, laid).size() + laid.settings.size();
            for (const kw::LaidPiece& piece : laid.pieces) {
                boxes_wanted += kw::say_cuts(work.job, laid, piece).size();
                parts += piece.parts.size();
                for (std::size_t i = 0; i < piece.parts.size(); ++i) {
                    const std::string name = kw::part_words(work.job.locale.words(), work.plan,
                                                            piece.parts[i].part),
                                      begins = std::to_string(i + 1) + " " + name.substr(0, name.find(' '));
                    CHECK(std::any_of(lines.begin(), lines.end(),
                                      [&](const std::string& line) { return line.rfind(begins, 0) == 0; }));
                }
            }
        }
        CHECK(parts == work.plan.parts.size());
        for (const Page& page : pages)
            for (const Item& item : page.items) {
                const auto* path = std::get_if<Path>(&item);
                if (path && path->closed && path->points[1].x_mm - path->points[0].x_mm < 3.5) ++boxes;
            }
        CHECK(boxes == boxes_wanted);
    });
}

TEST_CASE("a slide's template is true to size: its cross is where the slide's front end goes") {
    for_jobs(61, 70, [&](const kw::Work& work, Paper paper) {
        for (const Page& page : slide_templates(work, paper))
            for (const Item& item : page.items) {
                const auto* picture = std::get_if<Picture>(&item);
                if (!picture) continue;
                CHECK(picture->scale == 1.0);
                bool found = false;
                for (const kw::DrawerSpec& drawer : work.job.drawers)
                    if (const auto place = kw::slide_place_of(work.job, work.plan, drawer))
                        found =
                            found || picture->drawing == kw::draw::slide_template(*place, work.job.locale);
                CHECK(found);
            }
    });
    const kw::SlidePlace place{kw::Length::millimetres(22), kw::Length::millimetres(63),
                               kw::Length::millimetres(57)};
    const kw::draw::Drawing drawing = kw::draw::slide_template(place, kw::Locale(kw::Graduation::mm_0_1));
    // The middle's line runs at its height, and the cross's upright one as far behind the front.
    int upright = 0, level = 0;
    for (const auto& shape : drawing.shapes)
        if (const auto* line = std::get_if<kw::draw::Line>(&shape); line && line->points.size() == 2) {
            const auto &a = line->points[0], &b = line->points[1];
            upright += a.x_mm == 22 && b.x_mm == 22 && a.y_mm < 63 && b.y_mm > 63 ? 1 : 0;
            level += a.y_mm == 63 && b.y_mm == 63 && a.x_mm < 22 && b.x_mm > 22 ? 1 : 0;
        }
    CHECK(upright == 1);
    CHECK(level == 1);
}

TEST_CASE("names of a thousand letters are cut short, and nothing runs off the page") {
    kw::Json job = to_print::random_json(3);
    job["name"] = std::string(1000, 'w');
    for (std::size_t i = 0; i < job["drawers"].size(); ++i)
        job["drawers"][i]["name"] = std::string(1000, 'm') + std::to_string(i);
    const auto work = to_print::work_of(job);
    REQUIRE(work);
    for (const auto& pages : to_print::all_pages(*work, Paper::letter))
        for (const Page& page : pages) check_page(page);
}

TEST_CASE("a label says which part of its drawer it is, however long the drawer's name") {
    const auto work = to_print::work_of(to_print::with_long_names(to_print::random_json(2)));
    REQUIRE(work);
    std::string all;
    for (const std::string& line : lines_on(part_labels(*work, Paper::a4))) all += line + " ";
    const kw::Words& words = work->job.locale.words();
    std::size_t roles = 0;
    for (const kw::Part& part : work->plan.parts) {
        const std::string role = ", " + kw::role_words(words, part.size.role) + " " + part.id.substr(0, 4);
        roles += all.find(role) != std::string::npos;
    }
    CHECK(roles == work->plan.parts.size());
}
