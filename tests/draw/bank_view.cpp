// The elevation of a bank: each face where the tape has it, and the same picture as was looked at.
#include "draw/bank_view.h"

#include <doctest/doctest.h>

#include <algorithm>

#include "draw/golden.h"
#include "job/banks.h"

namespace banks_from_the_front {

using namespace kw;
using namespace kw::draw;

Job bank_job(FaceStyle style, bool rails) {
    Job job;
    for (const char* name : {"seeds", "twine", "tools"}) {
        DrawerSpec& drawer = job.drawers.emplace_back();
        drawer.name = name;
        drawer.opening = Opening{Length::inches(15), Length{}, Length::inches(18)};
    }
    BankSpec& bank = job.banks.emplace_back();
    bank.name = "left";
    bank.drawers = {"seeds", "twine", "tools"};
    bank.style = style;
    bank.width = Length::inches(15);
    bank.height = Length::inches(24);
    if (rails) bank.rail = Length::inches(3, 4);
    bank.heights = FaceHeights::graduated;
    bank.step = Length::inches(2);
    if (style == FaceStyle::overlay)
        bank.edges = {Length::inches(3, 4), Length::inches(3, 4), Length::inches(3, 4), Length::inches(3, 4)};
    bank.handles = HandleAsk{};
    bank.handles->centres = Length::millimetres(96);
    std::vector<Problem> problems;
    hang_in_banks(job, problems);
    REQUIRE(problems.empty());
    return job;
}

std::vector<RowHoles> holes_in(const BankSpec& bank) {
    std::vector<RowHoles> all;
    for (std::size_t i = 0; i < bank.rows.size(); ++i)
        all.push_back({i, handle_holes(*bank.handles, bank.made.face_width, bank.made.faces[i].height), {}});
    return all;
}

Drawing picture(FaceStyle style, bool rails) {
    const Job job = bank_job(style, rails);
    return bank_view(job, job.banks[0], Length::inches(-3, 4), holes_in(job.banks[0]));
}

std::vector<std::string> heights_in(const Drawing& drawing) {
    std::vector<std::string> all;
    for (const Shape& shape : drawing.shapes)
        if (const auto* one = std::get_if<Dimension>(&shape); one && one->side == Side::right)
            all.push_back(one->text);
    return all;
}

TEST_CASE("the picture of a bank says each height, and where each face begins from the case's lower end") {
    // 24 + 5/8 + 5/8 in less two reveals, 25 in; less 6 in of steps in three: 6 1/3, 8 1/3, 10 1/3 in, worked by hand.
    const Drawing drawing = picture(FaceStyle::overlay, false);
    CHECK(heights_in(drawing) == std::vector<std::string>{"6 21/64 in +", "8 21/64 in +", "10 21/64 in +"});
    std::vector<std::string> labels;
    for (const Shape& shape : drawing.shapes)
        if (const auto* label = std::get_if<Label>(&shape)) labels.push_back(label->text);
    for (const char* text : {"1", "2", "3", "1/8", "reveal 1/8 in", "covers 5/8 in below"})
        CHECK(std::find(labels.begin(), labels.end(), text) != labels.end());
}

TEST_CASE("banks are drawn as they were when someone looked at them") {
    CHECK(golden::is_as_kept("bank_overlay", picture(FaceStyle::overlay, false)));
    CHECK(golden::is_as_kept("bank_overlay_on_rails", picture(FaceStyle::overlay, true)));
    CHECK(golden::is_as_kept("bank_inset", picture(FaceStyle::inset, true)));
}

}  // namespace banks_from_the_front
