#pragma once
// The pictures that setup_view() chooses between, and what both need.

#include "draw/setup_scene.h"
#include "draw/setup_view.h"

namespace kw::draw {

// How far the machine is drawn to either side, from the fence's face.
struct Reach {
    double left_mm = 0;
    double right_mm = 0;
};

Reach reach_of(const SetupScene& scene);

// A picture on its way from one setting to another.
struct Way {
    const SetupScene& stands;  // what is drawn
    const SetupScene& says;    // what is written on it
    Reach reach;
    const SetupScene* stood = nullptr;  // before, where that is to be seen
    double stood_face_mm = 0;           // where the fence's face was, from where it is drawn
};

// Seen along the feed, the fence or the jig's pin at the left.
Drawing joint_cut_view(const Way& way, const SetupViewOptions& options);
Drawing jig_cut_view(const Way& way, const SetupViewOptions& options);
inline Drawing cut_view(const Way& way, const SetupViewOptions& options) {
    return way.says.index ? jig_cut_view(way, options) : joint_cut_view(way, options);
}
Drawing size_cut_view(const Work& work, const Setup& setup);

// Sizes of what is only shown, in proportion to the board. On a jig the pin is the fence.
double fence_top_mm(const SetupScene& scene);
double fence_left_mm(const SetupScene& scene);
double spacer_top_mm(const SetupScene& scene);
double slab_mm(const SetupScene& scene);       // y of the table's underside
double drawn_top_mm(const SetupScene& scene);  // of all that is drawn

// The stock of the first part that goes through. The plan's parts are of stock that the job has.
const Stock& stock_of(const Work& work, const Setup& setup);

// "fence 1/4 in": the text of this key with the length in it.
std::string measure_text(const Locale& locale, const char* key, Length length);

}  // namespace kw::draw
