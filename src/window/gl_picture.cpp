#include "window/gl_picture.h"

#include <imgui_internal.h>

#include <algorithm>
#include <cmath>

#include "window/platform.h"
#include "window/text.h"
#include "window/widgets.h"

namespace kw::window {
namespace {

constexpr int frames_kept =
    240;  // a picture that is away for a while is not rendered again when it comes back

Font font_for(Ui& ui, double size_px, bool bold) {
    return ui.fonts.get(bold ? Face::strong : Face::text, size_px);
}

// Pixel for pixel from the texture's own framebuffer: where pixels are drawn by the processor, far cheaper than a textured rectangle.
void copy_picture(const ImDrawList*, const ImDrawCmd* command) {
    const auto& copy = *static_cast<const PictureCopy*>(command->UserCallbackData);
    const ImGuiIO& io = ImGui::GetIO();
    const auto device = [](float value, float scale) { return static_cast<int>(std::lround(value * scale)); };
    const float sx = io.DisplayFramebufferScale.x, sy = io.DisplayFramebufferScale.y;
    const int x = device(copy.corner.x, sx), y = device(copy.corner.y, sy);
    const int left = std::max(x, device(command->ClipRect.x, sx)),
              right = std::min(x + copy.width, device(command->ClipRect.z, sx));
    const int top = std::max(y, device(command->ClipRect.y, sy)),
              bottom = std::min(y + copy.height, device(command->ClipRect.w, sy));
    if (right <= left || bottom <= top) return;
    // Both framebuffers count from their lower left corner.
    const int page = device(io.DisplaySize.y, sy), foot = copy.height - (bottom - y);
    glBindFramebuffer(GL_READ_FRAMEBUFFER, copy.framebuffer);
    glDisable(GL_SCISSOR_TEST);
    glBlitFramebuffer(left - x, foot, right - x, foot + bottom - top, left, page - bottom, right, page - top,
                      GL_COLOR_BUFFER_BIT, GL_NEAREST);
    glEnable(GL_SCISSOR_TEST);
    glBindFramebuffer(GL_READ_FRAMEBUFFER, 0);
}

void show(Ui& ui, ImDrawList& list, const Pictures::Picture& picture, ImVec2 corner) {
    const ImVec2 end{corner.x + static_cast<float>(picture.width),
                     corner.y + static_cast<float>(picture.height)};
    ui.picture_copies.push_back({picture.framebuffer, corner, picture.width, picture.height});
    list.AddCallback(copy_picture, &ui.picture_copies.back());
    list.PushClipRect(corner, end, true);
    for (const draw::PlacedText& text : picture.annotations.texts) {
        const draw::AnnotationStyle style = draw::annotation_style(text.emphasis, ui.theme);
        const ImVec2 at{corner.x + static_cast<float>(text.box.left),
                        corner.y + static_cast<float>(text.box.top)};
        draw_text(ui, list, at, text.text, font_for(ui, text.size_px, text.bold), colour(style.ink));
    }
    list.PopClipRect();
}

void log_picture(Ui& ui, const Pictures::Picture& picture, ImVec2 corner) {
    if (!ui.log) return;
    LoggedWidget whole;
    whole.kind = "picture";
    whole.label = picture.drawing.title;
    const draw::Box drawn = draw::bounds(picture.drawing);
    const draw::Pixel first = draw::to_pixel(picture.view, {drawn.left_mm, drawn.top_mm}),
                      last = draw::to_pixel(picture.view, {drawn.right_mm, drawn.bottom_mm});
    whole.drawn = {corner.x + first.x, corner.y + first.y, corner.x + last.x, corner.y + last.y};
    log_widget(ui, whole, corner,
               {corner.x + static_cast<float>(picture.width), corner.y + static_cast<float>(picture.height)});
    for (const draw::PlacedText& text : picture.annotations.texts) {
        LoggedWidget words;
        words.kind = "picture text";
        words.label = text.text;
        words.text_px = text.size_px / ui.pixel_ratio;
        words.contrast =
            draw::contrast(draw::annotation_style(text.emphasis, ui.theme).ink, ui.colours().card);
        words.cut_off = text.box.left < 0 || text.box.top < 0 || text.box.right > picture.width ||
                        text.box.bottom > picture.height;
        log_widget(
            ui, words,
            {corner.x + static_cast<float>(text.box.left), corner.y + static_cast<float>(text.box.top)},
            {corner.x + static_cast<float>(text.box.right), corner.y + static_cast<float>(text.box.bottom)});
    }
}

ImVec2 whole_pixels(ImVec2 size) {
    return {std::max(16.0f, std::floor(size.x)), std::max(16.0f, std::floor(size.y))};
}

}  // namespace

Pictures::~Pictures() {
    for (auto& [id, picture] : pictures_) {
        glDeleteFramebuffers(1, &picture.framebuffer);
        glDeleteTextures(1, &picture.texture);
    }
}

const Pictures::Picture& Pictures::rendered(Ui& ui, ImGuiID id, const draw::Drawing& drawing, ImVec2 size,
                                            const ViewTransform& look, const Approach& approach) {
    Picture& picture = pictures_[id];
    const int width = static_cast<int>(size.x), height = static_cast<int>(size.y);
    picture.last_frame = ImGui::GetFrameCount();
    const bool same_room = picture.texture && picture.width == width && picture.height == height;
    if (same_room && picture.theme == ui.theme && picture.pixel_ratio == ui.pixel_ratio &&
        picture.fonts == ui.fonts.generation() && picture.look == look &&
        picture.fraction == approach.fraction && picture.drawing == drawing) {
        return picture;
    }
    picture.drawing = drawing;
    picture.look = look;
    picture.theme = ui.theme;
    picture.pixel_ratio = ui.pixel_ratio;
    picture.fonts = ui.fonts.generation();
    picture.width = width;
    picture.height = height;
    set(ui, picture, same_room ? approach : Approach{});
    picture.fraction = approach.fraction;
    render(picture);
    return picture;
}

void Pictures::set(Ui& ui, Picture& picture, const Approach& approach) {
    const draw::TextMeasure measure = [&ui](std::string_view text, double size_px, bool bold) {
        return static_cast<double>(text_width(ui, text, font_for(ui, size_px, bold)));
    };
    const draw::View all =
        draw::fitted(picture.drawing, picture.width, picture.height, ui.pixel_ratio, measure);
    if (approach.fraction >= 1) {
        picture.all = picture.before = all;
    } else {
        draw::View from = picture.before;
        from.origin.x -= approach.shift_mm * from.px_per_mm;
        picture.all = between(from, all, approach.fraction);
    }
    picture.view = seen(picture.all, picture.look, picture.width, picture.height, ui.pixel_ratio);
    // A picture with a close-up has buttons at its foot: no words under them.
    if (picture.view.sheet && picture.drawing.close_up) picture.view.sheet->bottom -= ui.px(size::target);
    picture.annotations = draw::annotate(picture.drawing, picture.view, measure);
}

void Pictures::render(Picture& picture) {
    if (!picture.texture) {
        glGenTextures(1, &picture.texture);
        glGenFramebuffers(1, &picture.framebuffer);
    }
    glBindTexture(GL_TEXTURE_2D, picture.texture);
    glTexImage2D(GL_TEXTURE_2D, 0, GL_RGBA8, picture.width, picture.height, 0, GL_RGBA, GL_UNSIGNED_BYTE,
                 nullptr);
    glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_MIN_FILTER, GL_NEAREST);  // shown pixel for pixel
    glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_MAG_FILTER, GL_NEAREST);
    glBindFramebuffer(GL_FRAMEBUFFER, picture.framebuffer);
    glFramebufferTexture2D(GL_FRAMEBUFFER, GL_COLOR_ATTACHMENT0, GL_TEXTURE_2D, picture.texture, 0);
    painter_.paint(picture.drawing, picture.annotations, picture.view, picture.theme, picture.width,
                   picture.height);
    glBindFramebuffer(GL_FRAMEBUFFER, 0);
    ++platform::counters().pictures;
}

void Pictures::forget_unused(int frame) {
    for (auto it = pictures_.begin(); it != pictures_.end();) {
        if (frame - it->second.last_frame <= frames_kept) {
            ++it;
            continue;
        }
        glDeleteFramebuffers(1, &it->second.framebuffer);
        glDeleteTextures(1, &it->second.texture);
        it = pictures_.erase(it);
    }
}

const Pictures::Picture& draw_picture(Ui& ui, const char* id, const draw::Drawing& drawing, ImVec2 size,
                                      const ViewTransform& look, const Approach& approach) {
    const ImVec2 cursor = ImGui::GetCursorScreenPos();
    const ImVec2 corner{std::floor(cursor.x), std::floor(cursor.y)}, room = whole_pixels(size);
    const Pictures::Picture& picture =
        ui.pictures.rendered(ui, ImGui::GetID(id), drawing, room, look, approach);
    show(ui, *ImGui::GetWindowDrawList(), picture, corner);
    ImGui::Dummy(room);
    log_picture(ui, picture, corner);
    return picture;
}

namespace {

// Wheel, drag; true where it was pressed twice.
bool take_hand(Ui& ui, const char* id, ImVec2 room, ViewTransform& look) {
    const ImVec2 corner = ImGui::GetCursorScreenPos();
    ImGui::PushID(id);
    ImGui::SetNextItemAllowOverlap();
    ImGui::InvisibleButton("explore", room);
    const ImGuiIO& io = ImGui::GetIO();
    const FromMiddle at{(io.MousePos.x - corner.x - room.x / 2) / ui.px(1),
                        (io.MousePos.y - corner.y - room.y / 2) / ui.px(1)};
    const bool hovered = ImGui::IsItemHovered();
    if (hovered && io.MouseWheel != 0)
        look = zoomed_about(look, std::pow(1.25, static_cast<double>(io.MouseWheel)), at);
    ImGui::SetItemKeyOwner(ImGuiKey_MouseWheelY);
    // The step that arrives together with the release still counts.
    if ((ImGui::IsItemActive() || ImGui::IsItemDeactivated()) && look.zoom > 1) {
        look.pan_x_px += io.MouseDelta.x / ui.px(1);
        look.pan_y_px += io.MouseDelta.y / ui.px(1);
    }
    ImGui::PopID();
    return hovered && ImGui::IsMouseDoubleClicked(ImGuiMouseButton_Left);
}

}  // namespace

std::optional<std::size_t> buttons_on_picture(Ui& ui, ImVec2 corner, ImVec2 room,
                                              const std::vector<std::string>& labels, Corner at) {
    const Font font = ui.font(TypeSize::body, Face::strong);
    const float gap = ui.px(size::gap), most = (room.x - gap) / static_cast<float>(labels.size());
    std::vector<float> widths;
    float whole = -gap;
    for (const std::string& label : labels) {
        widths.push_back(std::min(most, std::ceil(text_width(ui, label, font) + 2 * ui.px(size::pad)) + 1));
        whole += widths.back() + gap;
    }
    float x = corner.x + (at == Corner::lower_left ? 0 : room.x - whole);
    const float y = corner.y + (at == Corner::upper_right ? 0 : room.y - ui.px(size::target));
    // Bare ground, on which words are read whatever the picture has there; and cheaper than sheets and edges.
    fill_opaque(ui, *ImGui::GetWindowDrawList(), {x, y}, {x + whole, y + ui.px(size::target)},
                ui.colours().card);
    std::optional<std::size_t> pressed;
    for (std::size_t i = 0; i < labels.size(); ++i) {
        ImGui::SetCursorScreenPos({x, y});
        if (quiet_button(ui, labels[i].c_str(), {.width = widths[i]})) pressed = i;
        x += widths[i] + gap;
    }
    ImGui::SetCursorScreenPos(corner);
    ImGui::Dummy(room);
    return pressed;
}

bool explore_picture(Ui& ui, const char* id, const draw::Drawing& drawing, ImVec2 size, ViewTransform& look,
                     const Explore& explore) {
    const ImVec2 corner = ImGui::GetCursorScreenPos(), whole = whole_pixels(size);
    // On a low page the buttons would lie on what is written there: they stand beneath.
    const bool has_buttons = drawing.close_up || !explore.also.empty();
    const bool at_foot = has_buttons && explore.corner != Corner::upper_right;
    const float foot = at_foot && ui.page_size.y < ui.px(700) ? ui.px(size::target) : 0;
    const ImVec2 room{whole.x, whole.y - foot};
    bool other_look = take_hand(ui, id, room, look);
    ImGui::SetCursorScreenPos(corner);
    const Pictures::Picture& picture = draw_picture(ui, id, drawing, room, look, explore.approach);
    std::vector<std::string> labels;
    const bool has_also = !explore.also.empty();
    if (has_also) labels.push_back(explore.also);
    if (drawing.close_up) labels.push_back(ui.text(look.zoom > 1 ? "picture.see_all" : "picture.zoom"));
    std::optional<std::size_t> pressed;
    if (foot > 0)  // of one piece with the picture
        canvas().AddRectFilled({corner.x, corner.y + room.y}, {corner.x + whole.x, corner.y + whole.y},
                               colour(ui.colours().card));
    if (!labels.empty()) {
        ImGui::PushID(id);
        pressed = buttons_on_picture(ui, corner, whole, labels, explore.corner);
        ImGui::PopID();
    }
    const bool is_also = has_also && pressed == std::size_t{0};
    if (pressed && !is_also) other_look = true;
    if (other_look) {
        if (look.zoom > 1 || !drawing.close_up) look = {};
        else look = kw::window::close_up(*drawing.close_up, picture.all, room.x, room.y, ui.pixel_ratio);
        ui.animate();
    }
    return is_also;
}

}  // namespace kw::window
