// A filled area with its hatches and its edge. Everything is found from distances in pixels, so edges are smooth at
// any zoom and hatches keep their spacing.
in vec2 v_pixel;
out vec4 colour;

uniform vec4 u_ground;   // alpha 0: the ground is left as it is
uniform vec3 u_hatch_ink;
uniform vec3 u_edge_ink;
uniform float u_edge_width;
uniform vec2 u_origin;   // where the picture's zero lies: hatches move with the picture
uniform int u_hatches;
uniform vec4 u_hatch_lines[3];   // cosine, sine, spacing, width
uniform vec4 u_hatch_dashes[3];  // offset, dash, space, stagger

float hatch_cover(vec4 lines, vec4 dashes, vec2 p) {
    float across = dot(p, vec2(lines.y, lines.x)) - dashes.x;
    float line = floor(across / lines.z + 0.5);
    float d = abs(across - line * lines.z);
    if (dashes.y > 0.0) {
        float along = dot(p, vec2(lines.x, -lines.y)) - line * dashes.w;
        float radius = 0.5 * lines.w;
        float reach = max(0.5 * dashes.y - radius, 0.0);
        float t = abs(mod(along - 0.5 * dashes.y + 0.5 * (dashes.y + dashes.z), dashes.y + dashes.z) -
                      0.5 * (dashes.y + dashes.z));
        d = length(vec2(max(t - reach, 0.0), d));
    }
    return line_cover(d, lines.w);
}

void main() {
    Nearest outline = nearest_outline(v_pixel);
    float depth = outline.inside ? outline.distance : -outline.distance;
    float area = clamp(depth + 0.5, 0.0, 1.0);
    vec3 rgb = u_ground.rgb;
    float alpha = u_ground.a;
    if (area > 0.0) {
        float hatch = 0.0;
        for (int i = 0; i < u_hatches; ++i) {
            hatch = max(hatch, hatch_cover(u_hatch_lines[i], u_hatch_dashes[i], v_pixel - u_origin));
        }
        float under = alpha;
        alpha = hatch + under * (1.0 - hatch);
        rgb = mix(u_ground.rgb, u_hatch_ink, alpha > 0.0 ? hatch / alpha : 0.0);
    }
    alpha *= area;
    float edge = u_edge_width > 0.0 ? line_cover(outline.distance, u_edge_width) * dash_cover(outline.along) : 0.0;
    float whole = edge + alpha * (1.0 - edge);
    colour = vec4(mix(rgb, u_edge_ink, whole > 0.0 ? edge / whole : 0.0), whole);
}
