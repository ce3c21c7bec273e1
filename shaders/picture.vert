// A rectangle of the sheet, in pixels with y down; the fragment shader finds out what of it is covered.
uniform vec4 u_box;    // left, top, right, bottom
uniform vec2 u_sheet;  // width, height
out vec2 v_pixel;

void main() {
    vec2 corner = vec2(float(gl_VertexID & 1), float(gl_VertexID >> 1));
    v_pixel = mix(u_box.xy, u_box.zw, corner);
    gl_Position = vec4(v_pixel.x / u_sheet.x * 2.0 - 1.0, 1.0 - v_pixel.y / u_sheet.y * 2.0, 0.0, 1.0);
}
