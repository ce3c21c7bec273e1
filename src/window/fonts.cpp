#include "window/fonts.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <fstream>
#include <iterator>
#include <string_view>

#include "window/platform.h"

namespace kw::window {
namespace {

// Western Latin, and every sign that the trade's numbers and this program's buttons use.
constexpr ImWchar text_ranges[] = {
    0x0020, 0x007e, 0x00a0, 0x00ff,                  // Latin-1
    0x2010, 0x2027, 0x2030, 0x2033,                  // dashes, quotes, ellipsis, per mille, primes
    0x2044, 0x2044,                                  // fraction slash
    0x2070, 0x208e,                                  // super- and subscript digits
    0x2150, 0x215f,                                  // eighths and other fractions
    0x2190, 0x2195, 0x21a9, 0x21ba,                  // arrows
    0x2212, 0x2212, 0x2248, 0x2248, 0x2264, 0x2265,  // minus, about, at most, at least
    0x232b, 0x232b,                                  // erase to the left
    0x25a0, 0x25a1, 0x25b2, 0x25b3, 0x25bc, 0x25bd, 0x25cb, 0x25cf,  // geometric marks
    0x26a0, 0x26a0, 0x2713, 0x2713, 0x2717, 0x2717,                  // warning, tick, cross
    0};

// The rest of Latin; half as many again, so only for those who need them.
constexpr ImWchar rare_letter_ranges[] = {0x0100, 0x017f,  // Latin Extended-A
                                          0x01a0, 0x01b0, 0x0218, 0x021b,
                                          0x0300, 0x0303, 0x1e80, 0x1ef9,  // Romanian, Welsh, Vietnamese
                                          0};

constexpr ImWchar figure_ranges[] = {0x0020, 0x0020, 0x0022, 0x0022, 0x0025, 0x0025, 0x0027, 0x0027, 0x002b,
                                     0x0039, 0x0063, 0x0063, 0x0066, 0x0066, 0x0069, 0x0069, 0x006d, 0x006e,
                                     0x0074, 0x0074,  // letters of in, mm, cm, ft
                                     0x00b0, 0x00b1, 0x00d7, 0x00d7, 0x00f8, 0x00f8, 0x2013, 0x2014, 0x2032,
                                     0x2033, 0x2044, 0x2044, 0x2212, 0x2212, 0x2248, 0x2248, 0};

std::vector<char> bytes_of(const std::filesystem::path& path) {
    std::ifstream in(path, std::ios::binary);
    return {std::istreambuf_iterator<char>(in), std::istreambuf_iterator<char>()};
}

unsigned u16(const std::vector<char>& bytes, std::size_t at) {
    if (at + 2 > bytes.size()) return 0;
    return static_cast<unsigned>(static_cast<unsigned char>(bytes[at])) << 8 |
           static_cast<unsigned char>(bytes[at + 1]);
}

int s16(const std::vector<char>& bytes, std::size_t at) {
    const int value = static_cast<int>(u16(bytes, at));
    return value >= 0x8000 ? value - 0x10000 : value;
}

// Start of a table of an OpenType file (the directory after the 12-byte header has 16 bytes a table); 0 if none.
std::size_t table(const std::vector<char>& bytes, std::string_view tag) {
    const std::size_t count = u16(bytes, 4);
    for (std::size_t i = 0, at = 12; i < count && at + 16 <= bytes.size(); ++i, at += 16) {
        if (std::string_view(bytes.data() + at, 4) == tag) {
            return static_cast<std::size_t>(u16(bytes, at + 8)) << 16 | u16(bytes, at + 10);
        }
    }
    return 0;
}

}  // namespace

bool Fonts::load(std::string& problem) {
    const auto read = [&](File& into, const char* name) {
        into.bytes = bytes_of(platform::asset(name));
        const std::size_t head = table(into.bytes, "head"), hhea = table(into.bytes, "hhea");
        const double units = head ? u16(into.bytes, head + 18) : 0;
        if (units <= 0 || hhea == 0) {
            problem = std::string("cannot read the font ") + name;
            return false;
        }
        const double ascent = s16(into.bytes, hhea + 4), descent = s16(into.bytes, hhea + 6);
        into.toolkit_px_per_em = (ascent - descent) / units;
        into.ascent_em = ascent / units;
        return true;
    };
    return read(regular_, "fonts/Inter-Regular.otf") && read(strong_, "fonts/Inter-SemiBold.otf");
}

Font Fonts::made(Key key, ImFont* font, double em_px) const {
    const File& source = file(key.first);
    Font result;
    result.font = font;
    result.em = static_cast<float>(em_px);
    result.size = static_cast<float>(em_px * source.toolkit_px_per_em);
    result.line = std::ceil(result.size);
    result.ascent = static_cast<float>(em_px * source.ascent_em);
    return result;
}

Font Fonts::get(Face face, double em_px) {
    const Key key{face, std::max(1, static_cast<int>(std::lround(em_px)))};
    const double size = key.second;
    const auto found = fonts_.find(key);
    if (found != fonts_.end() && found->second) return made(key, found->second, size);
    if (found == fonts_.end()) {
        fonts_[key] = nullptr;
        wanted_ = true;
    }
    ImFont* nearest = nullptr;
    int distance = 1 << 30;
    for (const auto& [other, font] : fonts_) {
        const bool serves = other.first == face || (face == Face::figures && other.first == Face::strong);
        if (font && serves && std::abs(other.second - key.second) < distance) {
            nearest = font;
            distance = std::abs(other.second - key.second);
        }
    }
    return made(key, nearest ? nearest : ImGui::GetIO().FontDefault, size);
}

void Fonts::need(std::string_view text) {
    if (rare_letters_) return;
    for (const char c : text) {
        const auto lead = static_cast<unsigned char>(c);
        // First bytes of U+0100 to U+033F and of U+1000 to U+1FFF.
        if ((lead >= 0xc4 && lead <= 0xcc) || lead == 0xe1) rare_letters_ = wanted_ = true;
    }
}

ImFont* Fonts::add(Key key, const ImWchar* ranges, bool to_the_last) {
    const File& source = file(key.first);
    // Letters keep their true widths, or words fall apart; large figures stand on whole pixels.
    const bool figures = key.first == Face::figures;
    ImFontConfig config;
    config.FontDataOwnedByAtlas = false;
    config.MergeMode = to_the_last;
    config.PixelSnapH = figures;
    config.OversampleH = figures ? 1 : 2;
    config.OversampleV = 1;
    auto* data = const_cast<char*>(source.bytes.data());  // read only: the atlas does not own it
    return ImGui::GetIO().Fonts->AddFontFromMemoryTTF(
        data, static_cast<int>(source.bytes.size()),
        static_cast<float>(key.second * source.toolkit_px_per_em), &config, ranges);
}

bool Fonts::build_wanted() {
    if (!wanted_) return false;
    wanted_ = false;
    ++generation_;
    ImGuiIO& io = ImGui::GetIO();
    io.Fonts->Clear();
    for (auto& [key, font] : fonts_) {
        const bool figures = key.first == Face::figures;
        font = add(key, figures ? figure_ranges : text_ranges, false);
        if (rare_letters_ && !figures) add(key, rare_letter_ranges, true);
    }
    io.FontDefault = fonts_.empty() ? nullptr : fonts_.begin()->second;
    return io.Fonts->Build();
}

}  // namespace kw::window
