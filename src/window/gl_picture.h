#pragma once
// A drawing as a widget. It is rendered into a texture of its own with our shaders, and rendered again only if the drawing,
// its size, the view of it or the look has changed.

#include <imgui.h>

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "draw/drawing.h"
#include "window/gl_painter.h"
#include "window/look.h"
#include "window/ui.h"

namespace kw::window {

// A picture that takes the place of another: the view goes with it from one to the other.
struct Approach {
    double fraction = 1;  // of the way; 1: there
    double shift_mm = 0;  // where (0, 0) of the picture before lies in this one, to the right
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
        double fraction = 1;
        draw::View all;     // without the look
        draw::View before;  // that of the last picture that was there, not on its way
        draw::View view;
        draw::Annotations annotations;
        GLuint framebuffer = 0;
        GLuint texture = 0;
        int last_frame = 0;
    };

    const Picture& rendered(Ui& ui, ImGuiID id, const draw::Drawing& drawing, ImVec2 size,
                            const ViewTransform& look, const Approach& approach = {});
    void forget_unused(int frame);
    std::size_t held() const { return pictures_.size(); }

private:
    void set(Ui& ui, Picture& picture, const Approach& approach);
    void render(Picture& picture);
    Painter painter_;
    std::map<ImGuiID, Picture> pictures_;
};

// Draws at the cursor, in a room of this size (device pixels). The drawing's title is its name in a test's log.
const Pictures::Picture& draw_picture(Ui& ui, const char* id, const draw::Drawing& drawing, ImVec2 size,
                                      const ViewTransform& look = {}, const Approach& approach = {});

// Where the buttons on a picture stand, in a row.
enum class Corner { lower_left, lower_right, upper_right };

struct Explore {
    Approach approach = {};
    Corner corner = Corner::lower_right;
    std::string also = {};  // a further button, by its label; empty: none
};

// The same, and the user may zoom it with the wheel (where a pad's pinch comes as one), drag it, and press twice to see its
// close-up and to see all of it again. A picture with a close-up has a button for that. True if the further one was pressed.
bool explore_picture(Ui& ui, const char* id, const draw::Drawing& drawing, ImVec2 size, ViewTransform& look,
                     const Explore& explore = {});

// A row of buttons in a picture's corner; which of them was pressed, or nothing. corner and room: the picture's.
std::optional<std::size_t> buttons_on_picture(Ui& ui, ImVec2 corner, ImVec2 room,
                                              const std::vector<std::string>& labels, Corner at);

}  // namespace kw::window
