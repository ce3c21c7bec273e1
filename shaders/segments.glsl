// Straight pieces of outlines, two texels each: (from, to) and (distance along the outline at `from`, 0, 0, 0).
uniform highp sampler2D u_segments;
flat in ivec2 v_pieces;  // the first, and how many
uniform vec4 u_dashes;  // dash, space, dash, space; all 0: unbroken

vec4 texel(int index) {
    return texelFetch(u_segments, ivec2(index & 255, index >> 8), 0);
}

struct Nearest {
    float distance;
    float along;  // distance along the outline of the nearest point
    bool inside;  // even-odd
};

Nearest nearest_outline(vec2 p) {
    Nearest result = Nearest(1e9, 0.0, false);
    for (int i = 0; i < v_pieces.y; ++i) {
        vec4 ends = texel(2 * (v_pieces.x + i));
        vec2 a = ends.xy;
        vec2 ab = ends.zw - a;
        vec2 ap = p - a;
        float length_squared = max(dot(ab, ab), 1e-12);
        float t = clamp(dot(ap, ab) / length_squared, 0.0, 1.0);
        float d = length(ap - ab * t);
        if (d < result.distance) {
            result.distance = d;
            result.along = texel(2 * (v_pieces.x + i) + 1).x + t * sqrt(length_squared);
        }
        // Half-open in y, so that a ray through a corner counts once.
        if ((a.y <= p.y) != (ends.w <= p.y) && p.x < a.x + ab.x * (p.y - a.y) / ab.y) {
            result.inside = !result.inside;
        }
    }
    return result;
}

// Share of a pixel that a line of this width covers whose middle is this far away.
float line_cover(float distance, float width) {
    return clamp(0.5 * width - distance + 0.5, 0.0, 1.0) * min(width, 1.0);
}

float dash_cover(float along) {
    if (u_dashes.x <= 0.0) return 1.0;
    float both = u_dashes.x + u_dashes.y + u_dashes.z + u_dashes.w;
    float t = mod(along, both);
    float start = u_dashes.x + u_dashes.y;
    float past = t < start || u_dashes.z <= 0.0
        ? (t <= u_dashes.x ? 0.0 : min(t - u_dashes.x, (u_dashes.z > 0.0 ? start : both) - t))
        : (t <= start + u_dashes.z ? 0.0 : min(t - start - u_dashes.z, both - t));
    return clamp(1.0 - past, 0.0, 1.0);
}
