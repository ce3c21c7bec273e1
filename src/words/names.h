#pragma once
// What is shown for the names that files, keys and code compare. Those stay as they are in every language; what a maker sees for them is
// looked up here. A name that no table has, as a maker's own, is shown as it is.

#include <string>
#include <string_view>
#include <vector>

#include "words/words.h"

namespace kw {

// Of a joint ("locking rabbet"), its label ("back dado"), a cut ("side dado"), or all that a setup does: "locking rabbet: side dado",
// "groove, pass 1 of 2", "crosscut to length: sides, fronts".
std::string work_word(const Words& words, std::string_view work);

// "fence", "height", "spacer", "kerf", "shift"; "cutter" and "shims", which are changed too.
std::string control_word(const Words& words, std::string_view control);
// "rip fence", "miter gauge", "stop".
std::string guide_word(const Words& words, std::string_view guide);
// "tongue thickness" for "tongue_thickness".
std::string reading_word(const Words& words, std::string_view reading);
// "hand tight", and the words for what is seen: "shoulder a hair open".
std::string feel_word(const Words& words, std::string_view feel);
std::string sight_word(const Words& words, std::string_view sight);
// "caliper", "rule".
std::string tool_word(const Words& words, std::string_view tool);
// "left side" for "side_left".
std::string role_word(const Words& words, std::string_view role);
// "left end", "bottom edge"; of several "left and right ends".
std::string end_word(const Words& words, std::string_view reference);
std::string ends_words(const Words& words, const std::vector<std::string_view>& references);
// "inside face down", "outside face up": of "inside", "outside".
std::string face_down_words(const Words& words, std::string_view face);
std::string face_up_words(const Words& words, std::string_view face);

// "table saw"; "dado stack"; "plywood"; "quartersawn"; "side mount".
std::string machine_kind_word(const Words& words, std::string_view kind);
std::string cutter_kind_word(const Words& words, std::string_view kind);
std::string stock_kind_word(const Words& words, std::string_view kind);
std::string grain_word(const Words& words, std::string_view grain);
std::string slide_kind_word(const Words& words, std::string_view kind);

}  // namespace kw
