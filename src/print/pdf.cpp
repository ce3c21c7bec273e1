#include "print/pdf.h"

#include <memory>

#include "print/cairo_library.h"
#include "print/marks.h"

namespace kw::print {
namespace {

constexpr double points_per_mm = 72 / 25.4;

// Opened once: what a library keeps for itself does not bear being loaded again and again.
const CairoLibrary& cairo_library() {
    static const CairoLibrary library;
    return library;
}

// A font file with what FreeType made of it. Cairo may keep a face longer than we do: it goes when cairo lets it go.
struct FontKept {
    explicit FontKept(std::string font) : bytes(std::move(font)) {}
    ~FontKept() {
        const CairoLibrary& lib = cairo_library();
        if (face) lib.ft_done_face(face);
        if (library) lib.ft_done(library);
    }
    FontKept(const FontKept&) = delete;
    FontKept& operator=(const FontKept&) = delete;

    std::string bytes;
    FT_Library library = nullptr;
    FT_Face face = nullptr;
};

void let_go(void* kept) { delete static_cast<FontKept*>(kept); }

const cairo_user_data_key_t* kept_key() {
    static const cairo_user_data_key_t key{};
    return &key;
}

struct FaceDestroyer {
    void operator()(cairo_font_face_t* face) const { cairo_library().face_destroy(face); }
};
using Face = std::unique_ptr<cairo_font_face_t, FaceDestroyer>;

// Null where the bytes are no font.
Face face_of(const std::string& bytes) {
    const CairoLibrary& lib = cairo_library();
    auto kept = std::make_unique<FontKept>(bytes);
    if (lib.ft_init(&kept->library) != 0) return nullptr;
    if (lib.ft_new_face(kept->library, reinterpret_cast<const FT_Byte*>(kept->bytes.data()),
                        static_cast<FT_Long>(kept->bytes.size()), 0, &kept->face) != 0)
        return nullptr;
    Face face(lib.face_create(kept->face, 0));
    if (lib.face_set_data(face.get(), kept_key(), kept.get(), let_go) != CAIRO_STATUS_SUCCESS) return nullptr;
    kept.release();
    return face;
}

cairo_status_t append(void* text, const unsigned char* data, unsigned length) {
    static_cast<std::string*>(text)->append(reinterpret_cast<const char*>(data), length);
    return CAIRO_STATUS_SUCCESS;
}

class PdfWriter {
public:
    PdfWriter(cairo_t* to, cairo_font_face_t* regular, cairo_font_face_t* strong)
        : to_(to), regular_(regular), strong_(strong) {
        lib_.set_fill_rule(to_, CAIRO_FILL_RULE_EVEN_ODD);
        lib_.set_line_cap(to_, CAIRO_LINE_CAP_ROUND);
        lib_.set_line_join(to_, CAIRO_LINE_JOIN_ROUND);
    }

    void operator()(const FilledArea& area) {
        set_ink(area.ink);
        for (const auto& ring : area.rings) trace(ring, true);
        lib_.fill(to_);
    }
    void operator()(const StrokedLines& lines) {
        set_ink(lines.ink);
        lib_.set_line_width(to_, lines.width_mm);
        const auto& d = lines.dashes_mm;
        lib_.set_dash(to_, d.data(), d[0] <= 0 ? 0 : d[2] > 0 ? 4 : 2, 0);
        for (const auto& line : lines.lines) trace(line, lines.closed);
        lib_.stroke(to_);
    }
    void operator()(const SetText& text) {
        set_ink(text.style.ink);
        lib_.set_font_face(to_, text.style.strong ? strong_ : regular_);
        lib_.set_font_size(to_, text.style.size_mm);
        lib_.move_to(to_, text.at.x_mm, text.at.y_mm);
        lib_.show_text(to_, text.text.c_str());
    }

private:
    void set_ink(draw::Rgb c) { lib_.set_rgb(to_, c.red / 255.0, c.green / 255.0, c.blue / 255.0); }
    void trace(const std::vector<Spot>& points, bool closed) {
        for (std::size_t i = 0; i < points.size(); ++i)
            (i == 0 ? lib_.move_to : lib_.line_to)(to_, points[i].x_mm, points[i].y_mm);
        if (closed && !points.empty()) lib_.close_path(to_);
    }

    const CairoLibrary& lib_ = cairo_library();
    cairo_t* to_;
    cairo_font_face_t *regular_, *strong_;
};

// Distances between letters are the font's own, whatever the machine likes on its screen.
void set_unhinted(cairo_t* to) {
    const CairoLibrary& lib = cairo_library();
    cairo_font_options_t* options = lib.options_create();
    lib.set_hint_style(options, CAIRO_HINT_STYLE_NONE);
    lib.set_hint_metrics(options, CAIRO_HINT_METRICS_OFF);
    lib.set_font_options(to, options);
    lib.options_destroy(options);
}

void draw_pages(cairo_surface_t* surface, const std::vector<Page>& pages, const Face& regular,
                const Face& strong) {
    const CairoLibrary& lib = cairo_library();
    cairo_t* to = lib.create(surface);
    for (const Page& page : pages) {
        const PaperSize size = size_of(page.paper);
        lib.pdf_set_size(surface, size.width.mm() * points_per_mm, size.height.mm() * points_per_mm);
        lib.save(to);
        lib.scale(to, points_per_mm, points_per_mm);
        set_unhinted(to);
        PdfWriter writer(to, regular.get(), strong.get());
        for (const Mark& mark : marks_of(page)) std::visit(writer, mark);
        lib.restore(to);
        lib.show_page(to);
    }
    lib.destroy(to);
}

}  // namespace

tl::expected<std::string, Message> write_pdf(const std::vector<Page>& pages, const PrintFonts& fonts) {
    const CairoLibrary& lib = cairo_library();
    if (!lib.is_there()) return tl::unexpected(Message::say("print.no_library"));
    const Face regular = face_of(fonts.regular), strong = face_of(fonts.strong);
    if (!regular || !strong) return tl::unexpected(Message::say("print.no_font"));
    std::string out;
    const PaperSize size = size_of(pages.empty() ? Paper::a4 : pages.front().paper);
    cairo_surface_t* surface =
        lib.pdf_create(append, &out, size.width.mm() * points_per_mm, size.height.mm() * points_per_mm);
    if (!pages.empty()) lib.pdf_set_metadata(surface, CAIRO_PDF_METADATA_TITLE, pages.front().title.c_str());
    lib.pdf_set_metadata(surface, CAIRO_PDF_METADATA_CREATE_DATE,
                         "");  // none: the time of printing is no part of it
    draw_pages(surface, pages, regular, strong);
    lib.surface_finish(surface);
    const cairo_status_t status = lib.surface_status(surface);
    lib.surface_destroy(surface);
    if (status != CAIRO_STATUS_SUCCESS)
        return tl::unexpected(
            Message::of(Message::say("print.not_written"), ": ", std::string(lib.status_words(status))));
    return out;
}

}  // namespace kw::print
