#pragma once
// The functions of cairo and FreeType that write pages, looked up in the libraries at run time. Private to this folder.

#include <cairo-ft.h>
#include <cairo-pdf.h>
#include <dlfcn.h>

namespace kw::print {

class CairoLibrary {
    void* cairo_ = ::dlopen("libcairo.so.2", RTLD_LAZY | RTLD_LOCAL);
    void* freetype_ = ::dlopen("libfreetype.so.6", RTLD_LAZY | RTLD_LOCAL);
    bool is_complete_ = true;

    template <class Function>
    Function of(void* library, const char* name) {
        void* found = library ? ::dlsym(library, name) : nullptr;
        if (!found) is_complete_ = false;
        return reinterpret_cast<Function>(found);
    }

public:
    decltype(&cairo_pdf_surface_create_for_stream) pdf_create =
        of<decltype(&cairo_pdf_surface_create_for_stream)>(cairo_, "cairo_pdf_surface_create_for_stream");
    decltype(&cairo_pdf_surface_set_size) pdf_set_size =
        of<decltype(&cairo_pdf_surface_set_size)>(cairo_, "cairo_pdf_surface_set_size");
    decltype(&cairo_pdf_surface_set_metadata) pdf_set_metadata =
        of<decltype(&cairo_pdf_surface_set_metadata)>(cairo_, "cairo_pdf_surface_set_metadata");
    decltype(&cairo_surface_finish) surface_finish =
        of<decltype(&cairo_surface_finish)>(cairo_, "cairo_surface_finish");
    decltype(&cairo_surface_destroy) surface_destroy =
        of<decltype(&cairo_surface_destroy)>(cairo_, "cairo_surface_destroy");
    decltype(&cairo_surface_status) surface_status =
        of<decltype(&cairo_surface_status)>(cairo_, "cairo_surface_status");
    decltype(&cairo_create) create = of<decltype(&cairo_create)>(cairo_, "cairo_create");
    decltype(&cairo_destroy) destroy = of<decltype(&cairo_destroy)>(cairo_, "cairo_destroy");
    decltype(&cairo_status_to_string) status_words =
        of<decltype(&cairo_status_to_string)>(cairo_, "cairo_status_to_string");
    decltype(&cairo_scale) scale = of<decltype(&cairo_scale)>(cairo_, "cairo_scale");
    decltype(&cairo_save) save = of<decltype(&cairo_save)>(cairo_, "cairo_save");
    decltype(&cairo_restore) restore = of<decltype(&cairo_restore)>(cairo_, "cairo_restore");
    decltype(&cairo_show_page) show_page = of<decltype(&cairo_show_page)>(cairo_, "cairo_show_page");
    decltype(&cairo_move_to) move_to = of<decltype(&cairo_move_to)>(cairo_, "cairo_move_to");
    decltype(&cairo_line_to) line_to = of<decltype(&cairo_line_to)>(cairo_, "cairo_line_to");
    decltype(&cairo_close_path) close_path = of<decltype(&cairo_close_path)>(cairo_, "cairo_close_path");
    decltype(&cairo_fill) fill = of<decltype(&cairo_fill)>(cairo_, "cairo_fill");
    decltype(&cairo_stroke) stroke = of<decltype(&cairo_stroke)>(cairo_, "cairo_stroke");
    decltype(&cairo_set_fill_rule) set_fill_rule =
        of<decltype(&cairo_set_fill_rule)>(cairo_, "cairo_set_fill_rule");
    decltype(&cairo_set_line_width) set_line_width =
        of<decltype(&cairo_set_line_width)>(cairo_, "cairo_set_line_width");
    decltype(&cairo_set_line_cap) set_line_cap =
        of<decltype(&cairo_set_line_cap)>(cairo_, "cairo_set_line_cap");
    decltype(&cairo_set_line_join) set_line_join =
        of<decltype(&cairo_set_line_join)>(cairo_, "cairo_set_line_join");
    decltype(&cairo_set_dash) set_dash = of<decltype(&cairo_set_dash)>(cairo_, "cairo_set_dash");
    decltype(&cairo_set_source_rgb) set_rgb =
        of<decltype(&cairo_set_source_rgb)>(cairo_, "cairo_set_source_rgb");
    decltype(&cairo_set_font_face) set_font_face =
        of<decltype(&cairo_set_font_face)>(cairo_, "cairo_set_font_face");
    decltype(&cairo_set_font_size) set_font_size =
        of<decltype(&cairo_set_font_size)>(cairo_, "cairo_set_font_size");
    decltype(&cairo_set_font_options) set_font_options =
        of<decltype(&cairo_set_font_options)>(cairo_, "cairo_set_font_options");
    decltype(&cairo_show_text) show_text = of<decltype(&cairo_show_text)>(cairo_, "cairo_show_text");
    decltype(&cairo_font_options_create) options_create =
        of<decltype(&cairo_font_options_create)>(cairo_, "cairo_font_options_create");
    decltype(&cairo_font_options_destroy) options_destroy =
        of<decltype(&cairo_font_options_destroy)>(cairo_, "cairo_font_options_destroy");
    decltype(&cairo_font_options_set_hint_style) set_hint_style =
        of<decltype(&cairo_font_options_set_hint_style)>(cairo_, "cairo_font_options_set_hint_style");
    decltype(&cairo_font_options_set_hint_metrics) set_hint_metrics =
        of<decltype(&cairo_font_options_set_hint_metrics)>(cairo_, "cairo_font_options_set_hint_metrics");
    decltype(&cairo_ft_font_face_create_for_ft_face) face_create =
        of<decltype(&cairo_ft_font_face_create_for_ft_face)>(cairo_, "cairo_ft_font_face_create_for_ft_face");
    decltype(&cairo_font_face_destroy) face_destroy =
        of<decltype(&cairo_font_face_destroy)>(cairo_, "cairo_font_face_destroy");
    decltype(&cairo_font_face_set_user_data) face_set_data =
        of<decltype(&cairo_font_face_set_user_data)>(cairo_, "cairo_font_face_set_user_data");
    decltype(&FT_Init_FreeType) ft_init = of<decltype(&FT_Init_FreeType)>(freetype_, "FT_Init_FreeType");
    decltype(&FT_Done_FreeType) ft_done = of<decltype(&FT_Done_FreeType)>(freetype_, "FT_Done_FreeType");
    decltype(&FT_New_Memory_Face) ft_new_face =
        of<decltype(&FT_New_Memory_Face)>(freetype_, "FT_New_Memory_Face");
    decltype(&FT_Done_Face) ft_done_face = of<decltype(&FT_Done_Face)>(freetype_, "FT_Done_Face");

    bool is_there() const { return is_complete_; }
};

}  // namespace kw::print
