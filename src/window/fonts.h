#pragma once
// Type at exact pixel sizes. A size that has not been asked for before is made before the next frame, and until then the
// nearest one stands in, so text is crisp at every scale without making every size at the start.

#include <imgui.h>

#include <filesystem>
#include <map>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace kw::window {

enum class Face {
    text,     // Inter Regular, Latin letters and the trade's signs
    strong,   // Inter SemiBold, the same
    figures,  // Inter SemiBold, only what a number is made of: for large sizes, and small digits of fractions
};

struct Font {
    ImFont* font = nullptr;
    float size = 20;    // as the toolkit counts it: from ascender to descender
    float em = 20;      // what a designer calls the size
    float line = 24;    // height of a line
    float ascent = 19;  // from the top of the line to the base line
};

class Fonts {
public:
    // em_px in device pixels.
    Font get(Face face, double em_px);
    // To be told every text that will be drawn: rarer letters are made once one of them is used.
    void need(std::string_view text);
    // Makes what was asked for since the last call. True if anything was made: the GL texture must then be renewed.
    bool build_wanted();
    // Counts builds: what was measured in an earlier one may be out by a pixel.
    int generation() const { return generation_; }
    // False with the file's name if a font could not be read.
    bool load(std::string& problem);

private:
    struct File {
        std::vector<char> bytes;
        double toolkit_px_per_em = 1.21;
        double ascent_em = 0.97;
    };
    using Key = std::pair<Face, int>;

    const File& file(Face face) const { return face == Face::text ? regular_ : strong_; }
    ImFont* add(Key key, const ImWchar* ranges, bool to_the_last);
    Font made(Key key, ImFont* font, double em_px) const;

    File regular_;
    File strong_;
    std::map<Key, ImFont*> fonts_;
    bool rare_letters_ = false;
    bool wanted_ = false;
    int generation_ = 0;
};

}  // namespace kw::window
