#include "window/setup_picture.h"

#include <algorithm>
#include <cmath>

#include "window/screen.h"
#include "window/screen_stand.h"
#include "window/screen_words.h"
#include "window/text.h"
#include "words/names.h"

namespace kw::window {
namespace {

constexpr float least_part_px = 300;                        // wide, for the names on it
constexpr float least_parts_px = 190, most_parts_px = 260;  // high, with their captions
constexpr float parts_share = 0.42f;                        // of the room
constexpr float least_section_px = 270;                     // high: with less, the boards have to go

// The first that has not gone through: its board is the next to be laid on the table.
std::size_t next_pass(const Stand& stand) {
    const std::vector<Pass>& passes = stand.setup.passes;
    const auto next = std::find_if(passes.begin(), passes.end(),
                                   [&](const Pass& pass) { return !has_run(stand.work, stand.setup, pass); });
    return next == passes.end() ? 0 : static_cast<std::size_t>(next - passes.begin());
}

std::vector<PartPicture> draw_parts(const Stand& stand, std::size_t first_pass,
                                    const draw::SetupViewOptions& options) {
    std::vector<PartPicture> parts;
    if (stand.setup.stage != Stage::joint) return parts;
    std::vector<draw::PartLie> lies = draw::part_lies(stand.work, stand.setup);
    // Beginning with the lie of the board that is next.
    const auto alike = std::find_if(lies.begin(), lies.end(), [&](const draw::PartLie& lie) {
        const Pass &a = stand.setup.passes[lie.pass], &b = stand.setup.passes[first_pass];
        const Part* part = stand.work.plan.part_with_id(b.part);
        return part && part->size.role == lie.role && a.reference == b.reference && a.down == b.down;
    });
    if (alike != lies.end()) std::rotate(lies.begin(), alike, lies.end());
    for (const draw::PartLie& lie : lies) {
        const Words& words = stand.work.job.locale.words();
        parts.push_back({words("picture.part", capital(role_words(words, lie.role)),
                               draw::lie_words(stand.work, stand.setup, lie, options)),
                         draw::part_view(stand.work, stand.setup, lie, options)});
    }
    return parts;
}

draw::Drawing draw_section(const Stand& stand, const SetupMotion& motion, double fraction,
                           const draw::SetupViewOptions& options) {
    if (!motion.shown) return draw::setup_view(stand.work, stand.setup, options);
    if (!motion.before) return draw::setup_view(*motion.shown, options);
    return draw::setup_slide(*motion.before, *motion.shown, fraction, options);
}

draw::SetupViewOptions picture_options(const Preferences& preferences) {
    return {.fence_left = preferences.fence_stands == Hand::left,
            .to_far_side = preferences.fence_to == CutterSide::far};
}

void bring_up_to_date(Screen& screen, const Stand& stand) {
    SetupPicture& picture = screen.state.setup_picture;
    const draw::SetupViewOptions options = picture_options(screen.state.preferences);
    const std::size_t next = next_pass(stand);
    const bool same =
        picture.of == screen.session.work && picture.step == stand.step && picture.options == options;
    if (!same)
        picture.motion.show(
            draw::setup_scene(stand.work, stand.setup),
            stand.at_machine ? draw::setup_scene(stand.work, *stand.at_machine) : std::nullopt,
            screen.ui.now_s);
    const double fraction = picture.motion.fraction(screen.ui.now_s);
    if (!same || fraction != picture.fraction)
        picture.section = draw_section(stand, picture.motion, fraction, options);
    if (!same || next != picture.first_pass) picture.parts = draw_parts(stand, next, options);
    picture.of = screen.session.work;
    picture.step = stand.step;
    picture.options = options;
    picture.first_pass = next;
    picture.fraction = fraction;
    if (fraction < 1) screen.ui.animate();
}

Approach approach_of(const SetupPicture& picture) {
    if (picture.fraction >= 1 || !picture.motion.before) return {};
    const double face = (picture.motion.shown->fence - picture.motion.before->fence).mm();
    return {picture.fraction, picture.options.fence_left ? face : -face};
}

void draw_part(Screen& screen, const PartPicture& part, const char* id, ImVec2 size) {
    Ui& ui = screen.ui;
    const Font font = ui.font(TypeSize::small, Face::strong);
    const ImVec2 corner = ImGui::GetCursorScreenPos();
    ImGui::BeginGroup();
    float y = corner.y;
    for (const std::string& line : wrapped(ui, part.caption, font, size.x)) {
        draw_text(ui, *ImGui::GetWindowDrawList(), {corner.x, y}, line, font, colour(ui.colours().ink));
        y += font.line;
    }
    ImGui::SetCursorScreenPos({corner.x, y});
    draw_picture(ui, id, part.drawing, {size.x, corner.y + size.y - y});
    ImGui::EndGroup();
}

void draw_parts_in_a_row(Screen& screen, float height) {
    Ui& ui = screen.ui;
    const std::vector<PartPicture>& parts = screen.state.setup_picture.parts;
    const float room = content_width(ui), gap = ui.px(size::gap);
    const auto fit = static_cast<std::size_t>(std::max(1.0f, (room + gap) / (ui.px(least_part_px) + gap)));
    const std::size_t count = std::min(parts.size(), fit);
    const float width = (room - gap * static_cast<float>(count - 1)) / static_cast<float>(count);
    for (std::size_t i = 0; i < count; ++i) {
        if (i > 0) ImGui::SameLine(0, gap);
        draw_part(screen, parts[i], ("part " + std::to_string(i)).c_str(), {width, height});
    }
}

}  // namespace

void SetupMotion::show(const std::optional<draw::SetupScene>& scene,
                       const std::optional<draw::SetupScene>& at_machine, double now_s) {
    const auto from = at_machine && scene && draw::slides(*at_machine, *scene) ? at_machine : std::nullopt;
    if (shown == scene && before == from) return;
    slides = shown.has_value();
    before = from;
    shown = scene;
    since_s = now_s;
}

double SetupMotion::fraction(double now_s) const {
    if (!before || !slides) return 1;
    const double left = 1 - std::clamp((now_s - since_s) / slide_s, 0.0, 1.0);
    return 1 - left * left * left;
}

void draw_setup_picture(Screen& screen, const Stand& stand, float height) {
    Ui& ui = screen.ui;
    bring_up_to_date(screen, stand);
    SetupPicture& picture = screen.state.setup_picture;
    const float gap = ui.px(size::gap), width = content_width(ui);
    const float below = std::clamp(parts_share * height, ui.px(least_parts_px), ui.px(most_parts_px));
    const Corner corner = picture.options.fence_left ? Corner::lower_right : Corner::lower_left;
    const bool has_parts = !picture.parts.empty();
    const bool both = has_parts && height - below - gap >= ui.px(least_section_px);
    if (has_parts && !both && picture.boards) {
        const ImVec2 at = ImGui::GetCursorScreenPos();
        draw_parts_in_a_row(screen, height - ui.px(size::target) - gap);
        ImGui::SetCursorScreenPos(at);
        if (buttons_on_picture(ui, at, {width, height}, {screen.text("picture.cut")}, corner))
            picture.boards = false;
        return;
    }
    const Explore explore{approach_of(picture), corner,
                          has_parts && !both ? screen.text("picture.boards") : std::string()};
    if (explore_picture(ui, "setup", picture.section, {width, both ? height - below - gap : height},
                        screen.state.picture, explore))
        picture.boards = true;
    if (both) draw_parts_in_a_row(screen, below);
}

}  // namespace kw::window
