#pragma once
// A picture as a value: a list of shapes in millimetres, x to the right, y up, drawn in order (later shapes lie on
// top). The window and the printed card draw the same value, so they cannot disagree. What a shape looks like
// (colours, hatches, line widths, text sizes) is not said here but in palette.h: a shape says only what it is.
//
// Text and the room it takes do not scale with the picture: sizes of text, the spacing of dimension rows and the
// widths of lines are in paper pixels (one pixel at scale 1; see layout.h).

#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace kw::draw {

struct Point {
    double x_mm = 0;
    double y_mm = 0;
    bool operator==(const Point&) const = default;
};

struct Box {
    double left_mm = 0;
    double bottom_mm = 0;
    double right_mm = 0;
    double top_mm = 0;
    bool operator==(const Box&) const = default;
};

// What a filled area is made of. Each has its own pattern as well as its own colour, so that no meaning hangs on colour.
enum class Material {
    end_grain,           // section through wood across the grain: close lining at 45 degrees
    long_grain,          // wood seen or cut along the grain: uneven lines along the grain
    plywood,             // section through plies: layers along the board
    cutter,              // blade, stack or bit: dark, unhatched
    fence,               // metal: wide lining
    table,               // the machine's table: wide lining, lies under everything
    spacer,              // block between work and fence: crossed lining
    sacrificial_spacer,  // the same, and the cutter runs into it: crossed lining with a bold edge
    overlap,             // two parts claim the same place: dense cross-hatch, loud
    gap,                 // nothing where something should be: dots
    removed,             // what the cutter takes away: outline and faint dashes
    ground,              // plain area behind other things
    done,                // work that is behind: no hatch, since words stand on it
    ahead,               // work that is to come: likewise
    next,                // the work that is next: likewise, with a bold edge
    shims,               // time to change shims: upright bars
    height,              // time to set the height: levels
    test_cut,            // time for a test cut: crossed lining
};

using Ring = std::vector<Point>;  // closed: the last point joins the first, and is not repeated

// Rings are filled even-odd: a ring within a ring is a hole. No ring may cross itself or another.
struct Fill {
    std::vector<Ring> rings;
    Material material = Material::end_grain;
    bool mirrored = false;  // hatch the other way: adjacent parts of one material take opposite directions
    bool upright = false;   // grain and plies run along y instead of x
    bool outlined = true;   // a firm line round the area
    bool operator==(const Fill&) const = default;
};

enum class Stroke {
    outline,         // visible edge
    thin,            // detail, leader
    centre,          // long dash, short dash: axis
    hidden,          // short dashes: an edge behind something
    ghost,           // where something was, or will be
    arrow,           // a movement: ends in an arrowhead at the last point
    walk,            // steps from one machine to another: dots
    now,             // how far the work has come
    stood,           // where something stood before it was moved
    pencil,          // what the maker marks on the wood
    pencil_beneath,  // the same on the side that is not seen
    halo,            // bare ground round a pencil line
    glue,            // where glue is brushed
};

struct Line {
    std::vector<Point> points;
    Stroke stroke = Stroke::outline;
    bool operator==(const Line&) const = default;
};

enum class Emphasis {
    plain,
    strong,   // a number that the maker sets or checks now
    changed,  // differs from the setup before
    faint,    // for orientation only
};

// The side on which a dimension line stands. above and below measure along x, left and right along y.
enum class Side { above, below, left, right };

// That a dimension differs from before: by how much, in words under its text, and where the end that has moved stood.
struct Change {
    Point stood;
    std::string text;
    bool operator==(const Change&) const = default;
};

// A dimension between two points. Its line stands outside of `clear_of_mm` (a y for above and below, an x for left
// and right; usually the edge of the picture's solid things), in paper row `row` counted outwards from 0. A row that
// is taken already at that place moves the dimension further out.
struct Dimension {
    Point from;
    Point to;
    Side side = Side::above;
    double clear_of_mm = 0;
    int row = 0;
    std::string text;
    Emphasis emphasis = Emphasis::plain;
    std::optional<Change> change = {};
    bool spare = false;  // as of a label
    bool operator==(const Dimension&) const = default;
};

// Which point of the text stands at Label::at.
enum class Anchor { centre, left, right, bottom, top };

struct Label {
    Point at;
    std::string text;
    Anchor anchor = Anchor::centre;
    Emphasis emphasis = Emphasis::plain;
    std::optional<Point> points_at = {};  // with a leader line from the text to this point
    bool spare = false;                   // said beside the picture too: left out where there is little room
    bool bare = false;                    // stands on a plain area: no ground of its own
    bool on_drawing = false;              // left out where the sheet is low, and said beside the picture
    bool operator==(const Label&) const = default;
};

using Shape = std::variant<Fill, Line, Dimension, Label>;

struct Drawing {
    std::string title;  // in words, for those who cannot see it, and for the file
    std::vector<Shape> shapes;
    std::optional<Box> frame = {};     // what must be seen, if not just all that is drawn
    std::optional<Box> close_up = {};  // what is looked at closely, where there is such a place
    bool operator==(const Drawing&) const = default;
};

// The smallest box around everything that is drawn, without the room that text takes; the frame, if there is one.
// A box of size zero at the origin if nothing is drawn.
Box bounds(const Drawing& drawing);

Ring rectangle(const Box& box);
Ring circle(Point centre, double radius_mm, int corners = 72);

// The picture seen in a mirror that stands upright at x = axis: hatches and dimension sides turn with it.
Drawing mirrored_about_x(const Drawing& drawing, double axis_mm);

}  // namespace kw::draw
