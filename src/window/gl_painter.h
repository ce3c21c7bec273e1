#pragma once
// Paints a drawing's areas, lines and dimension lines (all but the words) into the bound framebuffer with our own shaders.

#include <array>
#include <vector>

#include "draw/layout.h"
#include "window/shader.h"

namespace kw::window {

class Painter {
public:
    Painter() = default;
    Painter(const Painter&) = delete;
    Painter& operator=(const Painter&) = delete;
    ~Painter();

    // Paints a sheet of width x height device pixels; the caller has bound a framebuffer of that size.
    void paint(const draw::Drawing& drawing, const draw::Annotations& annotations, const draw::View& view,
               draw::Theme theme, int width, int height);

private:
    struct Outline {
        int first = 0;
        int count = 0;
        draw::PixelBox box;
    };
    using Style = std::variant<draw::FillStyle, draw::LineStyle>;
    // Shapes of one look that come one after another, sent together: a call for each takes longer than all else.
    struct Run {
        Style style;
        int first = 0;  // of its corners
        int count = 0;
    };

    void start();
    void collect(const draw::Drawing& drawing, const draw::Annotations& annotations);
    void add(const draw::Fill& fill);
    void add(const draw::Line& line);
    void add_line(draw::Pixel from, draw::Pixel to, draw::Rgb ink, double width_px);
    void add_arrowhead(draw::Pixel tip, draw::Pixel direction, draw::Rgb ink, double factor);
    void add_plate(const draw::PlacedText& text);
    void add_solid(const std::vector<draw::Pixel>& corners, draw::Rgb rgb, draw::Rgb edge, double edge_px);
    void begin_outline(Outline& outline) const;
    void add_piece(Outline& outline, draw::Pixel a, draw::Pixel b, double& along);
    void end_outline(const Outline& outline, Style style);
    void upload();
    void send(const draw::FillStyle& style);
    void send(const draw::LineStyle& style);
    void send_run(const Program& program, const std::array<double, 4>& dashes_px);

    Program areas_;
    Program lines_;
    GLuint vertex_array_ = 0;
    GLuint corners_buffer_ = 0;
    GLuint segments_texture_ = 0;

    // Of the drawing being painted.
    std::vector<float> segments_;
    std::vector<float> corners_;  // x, y, first piece of its outline, number of pieces
    std::vector<Run> runs_;
    draw::View view_;
    draw::Theme theme_ = draw::Theme::light;
    float width_ = 1;
    float height_ = 1;
};

}  // namespace kw::window
