// A corner of a rectangle of the sheet, in pixels with y down; the fragment shader finds out what of the rectangle is covered.
layout(location = 0) in vec2 a_pixel;
layout(location = 1) in vec2 a_pieces;  // of its outline: the first, and how many
uniform vec2 u_sheet;  // width, height
out vec2 v_pixel;
flat out ivec2 v_pieces;

void main() {
    v_pixel = a_pixel;
    v_pieces = ivec2(a_pieces);
    gl_Position = vec4(v_pixel.x / u_sheet.x * 2.0 - 1.0, 1.0 - v_pixel.y / u_sheet.y * 2.0, 0.0, 1.0);
}
