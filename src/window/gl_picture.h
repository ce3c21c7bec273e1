#pragma once
// A drawing as a widget. It is rendered into a texture of its own with our shaders, and rendered again only if the drawing,
// its size, the view of it or the look has changed.

#include <imgui.h>

#include <map>

#include "draw/drawing.h"
#include "window/gl_painter.h"
#include "window/ui.h"

namespace kw::window {

// How the user looks at a picture, on top of fitting it into its room.
struct ViewTransform {
    double zoom = 1;      // 1: all of it
    double pan_x_px = 0;  // paper pixels
    double pan_y_px = 0;
    bool operator==(const ViewTransform&) const = default;
};

class Pictures {
public:
    Pictures() = default;
    Pictures(const Pictures&) = delete;
    Pictures& operator=(const Pictures&) = delete;
    ~Pictures();

    struct Picture {
        draw::Drawing drawing;
        ViewTransform look;
        draw::Theme theme = draw::Theme::light;
        double pixel_ratio = 0;
        int fonts = 0;
        int width = 0;
        int height = 0;
        draw::View view;
        draw::Annotations annotations;
        GLuint framebuffer = 0;
        GLuint texture = 0;
        int last_frame = 0;
    };

    const Picture& rendered(Ui& ui, ImGuiID id, const draw::Drawing& drawing, ImVec2 size,
                            const ViewTransform& look);
    void forget_unused(int frame);
    std::size_t held() const { return pictures_.size(); }

private:
    void render(Picture& picture);
    Painter painter_;
    std::map<ImGuiID, Picture> pictures_;
};

// Draws at the cursor, in a room of this size (device pixels). The drawing's title is its name in a test's log.
void draw_picture(Ui& ui, const char* id, const draw::Drawing& drawing, ImVec2 size,
                  const ViewTransform& look = {});

// The same, and the user may zoom it with the wheel, drag it, and press twice to see all of it again.
void explore_picture(Ui& ui, const char* id, const draw::Drawing& drawing, ImVec2 size, ViewTransform& look);

}  // namespace kw::window
