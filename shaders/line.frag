// A line with thickness, smooth edges, round ends and dashes.
in vec2 v_pixel;
out vec4 colour;

uniform vec3 u_ink;
uniform float u_width;

void main() {
    Nearest line = nearest_outline(v_pixel);
    colour = vec4(u_ink, line_cover(line.distance, u_width) * dash_cover(line.along));
}
