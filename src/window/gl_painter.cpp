#include "window/gl_painter.h"

#include <algorithm>
#include <cmath>

#include "window/shaders_embedded.h"
#include "window/theme.h"

namespace kw::window {
namespace {

constexpr std::size_t floats_in_corner = 4, corners_of_rectangle = 6;
constexpr int texture_width = 256;  // what segments.glsl counts with
constexpr double pi = 3.14159265358979323846;

float f(double value) { return static_cast<float>(value); }

void send_colour(const Program& program, const char* name, draw::Rgb c) {
    glUniform3f(program.uniform(name), part(c.red), part(c.green), part(c.blue));
}

draw::Pixel direction_of(draw::Pixel from, draw::Pixel to) {
    const double dx = to.x - from.x, dy = to.y - from.y, length = std::hypot(dx, dy);
    return length > 0 ? draw::Pixel{dx / length, dy / length} : draw::Pixel{1, 0};
}

}  // namespace

Painter::~Painter() {
    if (vertex_array_) glDeleteVertexArrays(1, &vertex_array_);
    if (corners_buffer_) glDeleteBuffers(1, &corners_buffer_);
    if (segments_texture_) glDeleteTextures(1, &segments_texture_);
}

void Painter::start() {
    if (vertex_array_) return;
    areas_.link(shaders::picture_vert, {shaders::segments_glsl, shaders::area_frag});
    lines_.link(shaders::picture_vert, {shaders::segments_glsl, shaders::line_frag});
    glGenVertexArrays(1, &vertex_array_);
    glGenBuffers(1, &corners_buffer_);
    glBindVertexArray(vertex_array_);
    glBindBuffer(GL_ARRAY_BUFFER, corners_buffer_);
    constexpr GLsizei stride = floats_in_corner * sizeof(float);
    for (const GLuint place : {0u, 1u}) {
        glEnableVertexAttribArray(place);
        glVertexAttribPointer(place, 2, GL_FLOAT, GL_FALSE, stride,
                              reinterpret_cast<const void*>(2 * place * sizeof(float)));
    }
    glGenTextures(1, &segments_texture_);
}

void Painter::paint(const draw::Drawing& drawing, const draw::Annotations& annotations,
                    const draw::View& view, draw::Theme theme, int width, int height) {
    start();
    view_ = view;
    theme_ = theme;
    width_ = static_cast<float>(width);
    height_ = static_cast<float>(height);
    segments_.clear();
    corners_.clear();
    runs_.clear();
    collect(drawing, annotations);
    const draw::Rgb card = draw::palette(theme).card;
    glViewport(0, 0, width, height);
    glDisable(GL_SCISSOR_TEST);
    glClearColor(part(card.red), part(card.green), part(card.blue), 1);
    glClear(GL_COLOR_BUFFER_BIT);
    glEnable(GL_BLEND);
    glBlendFuncSeparate(GL_SRC_ALPHA, GL_ONE_MINUS_SRC_ALPHA, GL_ONE, GL_ONE_MINUS_SRC_ALPHA);
    glBindVertexArray(vertex_array_);
    upload();
    for (const Run& run : runs_) {
        std::visit([this](const auto& style) { send(style); }, run.style);
        glDrawArrays(GL_TRIANGLES, run.first, run.count);
    }
    glBindBuffer(GL_ARRAY_BUFFER, 0);
    glBindVertexArray(0);
}

void Painter::collect(const draw::Drawing& drawing, const draw::Annotations& annotations) {
    for (const draw::Shape& shape : drawing.shapes) {
        if (const auto* fill = std::get_if<draw::Fill>(&shape)) add(*fill);
        else if (const auto* line = std::get_if<draw::Line>(&shape)) add(*line);
    }
    const double thin = draw::annotation_style(draw::Emphasis::faint, theme_).line_px;
    for (const draw::PlacedLine& line : annotations.lines) {
        const draw::AnnotationStyle style = draw::annotation_style(line.emphasis, theme_);
        add_line(line.from, line.to, style.ink, line.extension ? thin : style.line_px);
    }
    for (const draw::PlacedArrow& arrow : annotations.arrows) {
        add_arrowhead(arrow.tip, arrow.direction, draw::annotation_style(arrow.emphasis, theme_).ink, 1);
    }
    for (const draw::Pixel& dot : annotations.dots) add_line(dot, dot, draw::palette(theme_).ink, 6);
    for (const draw::PlacedText& text : annotations.texts)
        if (!text.bare) add_plate(text);
}

void Painter::begin_outline(Outline& outline) const {
    outline.first = static_cast<int>(segments_.size() / 8);
    outline.box = {1e30, 1e30, -1e30, -1e30};
}

void Painter::add_piece(Outline& outline, draw::Pixel a, draw::Pixel b, double& along) {
    segments_.insert(segments_.end(), {f(a.x), f(a.y), f(b.x), f(b.y), f(along), 0, 0, 0});
    along += std::hypot(b.x - a.x, b.y - a.y);
    ++outline.count;
    outline.box = {std::min({outline.box.left, a.x, b.x}), std::min({outline.box.top, a.y, b.y}),
                   std::max({outline.box.right, a.x, b.x}), std::max({outline.box.bottom, a.y, b.y})};
}

// A rectangle round the outline and all that its line reaches. Only what lies on the sheet: a picture that is zoomed in far has boxes
// many sheets wide.
void Painter::end_outline(const Outline& outline, Style style) {
    const auto* fill = std::get_if<draw::FillStyle>(&style);
    const double line_px = fill ? fill->edge_px : std::get<draw::LineStyle>(style).width_px;
    const double reach = line_px * view_.pixel_ratio / 2 + 1;
    const float left = std::max(f(outline.box.left - reach), 0.0f),
                top = std::max(f(outline.box.top - reach), 0.0f),
                right = std::min(f(outline.box.right + reach), width_),
                bottom = std::min(f(outline.box.bottom + reach), height_);
    if (outline.count == 0 || right <= left || bottom <= top) return;
    if (runs_.empty() || runs_.back().style != style)
        runs_.push_back({std::move(style), static_cast<int>(corners_.size() / floats_in_corner), 0});
    const auto first = static_cast<float>(outline.first), count = static_cast<float>(outline.count);
    for (const auto& [x, y] : {std::pair{left, top},
                               {right, top},
                               {left, bottom},  //
                               {left, bottom},
                               {right, top},
                               {right, bottom}})
        corners_.insert(corners_.end(), {x, y, first, count});
    runs_.back().count += corners_of_rectangle;
}

void Painter::add(const draw::Fill& fill) {
    Outline outline;
    begin_outline(outline);
    for (const draw::Ring& ring : fill.rings) {
        double along = 0;
        for (std::size_t i = 0; i < ring.size(); ++i) {
            add_piece(outline, to_pixel(view_, ring[i]), to_pixel(view_, ring[(i + 1) % ring.size()]), along);
        }
    }
    end_outline(outline, draw::fill_style(fill, theme_));
}

void Painter::add(const draw::Line& line) {
    if (line.points.size() < 2) return;
    const draw::LineStyle style = draw::line_style(line.stroke, theme_);
    Outline outline;
    begin_outline(outline);
    double along = 0;
    for (std::size_t i = 0; i + 1 < line.points.size(); ++i) {
        add_piece(outline, to_pixel(view_, line.points[i]), to_pixel(view_, line.points[i + 1]), along);
    }
    end_outline(outline, style);
    if (line.stroke != draw::Stroke::arrow) return;
    const draw::Pixel tip = to_pixel(view_, line.points.back());
    add_arrowhead(tip, direction_of(to_pixel(view_, line.points[line.points.size() - 2]), tip), style.ink,
                  1.6);
}

void Painter::add_line(draw::Pixel from, draw::Pixel to, draw::Rgb ink, double width_px) {
    Outline outline;
    begin_outline(outline);
    double along = 0;
    add_piece(outline, from, to, along);
    end_outline(outline, draw::LineStyle{ink, width_px, {}});
}

void Painter::add_arrowhead(draw::Pixel tip, draw::Pixel direction, draw::Rgb ink, double factor) {
    const double l = draw::arrow_length_px * factor * view_.pixel_ratio;
    const double h = draw::arrow_half_width_px * factor * view_.pixel_ratio;
    const draw::Pixel back{tip.x - direction.x * l, tip.y - direction.y * l};
    add_solid({tip,
               {back.x - direction.y * h, back.y + direction.x * h},
               {back.x + direction.y * h, back.y - direction.x * h}},
              ink, ink, 0);
}

void Painter::add_plate(const draw::PlacedText& text) {
    const double pad = draw::plate_pad_px * view_.pixel_ratio;
    const draw::PixelBox b{text.box.left - pad, text.box.top - pad, text.box.right + pad,
                           text.box.bottom + pad};
    const draw::AnnotationStyle style = draw::annotation_style(text.emphasis, theme_);
    add_solid({{b.left, b.top}, {b.right, b.top}, {b.right, b.bottom}, {b.left, b.bottom}},
              draw::palette(theme_).card, style.ink, text.framed ? style.line_px : 0);
}

void Painter::add_solid(const std::vector<draw::Pixel>& corners, draw::Rgb rgb, draw::Rgb edge,
                        double edge_px) {
    draw::FillStyle style;
    style.ground = rgb;
    style.edge = edge;
    style.edge_px = edge_px;
    Outline outline;
    begin_outline(outline);
    double along = 0;
    for (std::size_t i = 0; i < corners.size(); ++i) {
        add_piece(outline, corners[i], corners[(i + 1) % corners.size()], along);
    }
    end_outline(outline, std::move(style));
}

void Painter::upload() {
    const int texels = static_cast<int>(segments_.size() / 4);
    const int rows = std::max(1, (texels + texture_width - 1) / texture_width);
    segments_.resize(static_cast<std::size_t>(rows * texture_width) * 4);
    glBindBuffer(GL_ARRAY_BUFFER, corners_buffer_);
    glBufferData(GL_ARRAY_BUFFER, static_cast<GLsizeiptr>(corners_.size() * sizeof(float)), corners_.data(),
                 GL_STREAM_DRAW);
    glActiveTexture(GL_TEXTURE0);
    glBindTexture(GL_TEXTURE_2D, segments_texture_);
    glPixelStorei(GL_UNPACK_ALIGNMENT, 4);
    glTexImage2D(GL_TEXTURE_2D, 0, GL_RGBA32F, texture_width, rows, 0, GL_RGBA, GL_FLOAT, segments_.data());
    glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_MIN_FILTER, GL_NEAREST);
    glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_MAG_FILTER, GL_NEAREST);
}

void Painter::send_run(const Program& program, const std::array<double, 4>& dashes_px) {
    const double r = view_.pixel_ratio;
    glUniform2f(program.uniform("u_sheet"), width_, height_);
    glUniform1i(program.uniform("u_segments"), 0);
    glUniform4f(program.uniform("u_dashes"), f(dashes_px[0] * r), f(dashes_px[1] * r), f(dashes_px[2] * r),
                f(dashes_px[3] * r));
}

void Painter::send(const draw::FillStyle& style) {
    const double r = view_.pixel_ratio;
    areas_.use();
    glUniform4f(areas_.uniform("u_ground"), part(style.ground.red), part(style.ground.green),
                part(style.ground.blue), style.transparent ? 0.0f : 1.0f);
    send_colour(areas_, "u_hatch_ink", style.hatch_ink);
    send_colour(areas_, "u_edge_ink", style.edge);
    glUniform1f(areas_.uniform("u_edge_width"), f(style.edge_px * r));
    glUniform2f(areas_.uniform("u_origin"), f(view_.origin.x), f(view_.origin.y));
    const std::size_t count = std::min(style.hatches.size(), draw::max_hatches);
    std::array<float, 4 * draw::max_hatches> lines{}, dashes{};
    for (std::size_t i = 0; i < count; ++i) {
        const draw::Hatch& h = style.hatches[i];
        const double angle_rad = h.angle_deg * pi / 180;
        const float line[] = {f(std::cos(angle_rad)), f(std::sin(angle_rad)), f(h.spacing_px * r),
                              f(h.width_px * r)};
        const float dash[] = {f(h.offset_px * r), f(h.dash_px * r), f(h.space_px * r), f(h.stagger_px * r)};
        std::copy(line, line + 4, lines.begin() + static_cast<std::ptrdiff_t>(4 * i));
        std::copy(dash, dash + 4, dashes.begin() + static_cast<std::ptrdiff_t>(4 * i));
    }
    glUniform1i(areas_.uniform("u_hatches"), static_cast<GLint>(count));
    glUniform4fv(areas_.uniform("u_hatch_lines"), static_cast<GLsizei>(draw::max_hatches), lines.data());
    glUniform4fv(areas_.uniform("u_hatch_dashes"), static_cast<GLsizei>(draw::max_hatches), dashes.data());
    send_run(areas_, {style.edge_dash_px, style.edge_space_px, 0, 0});
}

void Painter::send(const draw::LineStyle& style) {
    lines_.use();
    send_colour(lines_, "u_ink", style.ink);
    glUniform1f(lines_.uniform("u_width"), f(style.width_px * view_.pixel_ratio));
    send_run(lines_, style.dashes_px);
}

}  // namespace kw::window
