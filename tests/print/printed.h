#pragma once
// Pages as others see them: Poppler's programs, which share nothing with what wrote the pages.

#include <doctest/doctest.h>
#include <unistd.h>

#include <array>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <string>
#include <vector>

#include "print/pdf.h"
#include "text_in.h"

namespace printed {

inline kw::print::PrintFonts fonts() {
    return {kw::tests::text_in(KW_ASSET_DIR "/fonts/Inter-Regular.otf"),
            kw::tests::text_in(KW_ASSET_DIR "/fonts/Inter-SemiBold.otf")};
}

inline std::string answer_of(const std::string& command) {
    std::string out;
    FILE* pipe = ::popen(command.c_str(), "r");
    REQUIRE(pipe);
    std::array<char, 4096> part{};
    for (std::size_t got = 0; (got = std::fread(part.data(), 1, part.size(), pipe)) > 0;)
        out.append(part.data(), got);
    CHECK(::pclose(pipe) == 0);
    return out;
}

// A PDF on the disk, gone when the test is done with it.
class Pdf {
public:
    explicit Pdf(const std::vector<kw::print::Page>& pages)
        : path_(std::filesystem::temp_directory_path() / ("kw-print-" + std::to_string(getpid()) + ".pdf")) {
        const auto bytes = kw::print::write_pdf(pages, fonts());
        REQUIRE(bytes);
        std::ofstream(path_, std::ios::binary) << *bytes;
    }
    ~Pdf() { std::filesystem::remove(path_); }
    Pdf(const Pdf&) = delete;
    Pdf& operator=(const Pdf&) = delete;

    std::string info() const { return answer_of("pdfinfo '" + path_.string() + "'"); }
    std::string fonts_in() const { return answer_of("pdffonts '" + path_.string() + "'"); }
    // The text of one page, from 1; its fractions with a slash.
    std::string text(int page) const {
        const std::string n = std::to_string(page);
        std::string all = answer_of("pdftotext -f " + n + " -l " + n + " '" + path_.string() + "' -");
        const std::string slash = "\u2044";
        for (std::size_t at = all.find(slash); at != std::string::npos; at = all.find(slash, at + 1))
            all.replace(at, slash.size(), "/");
        return all;
    }
    std::string boxes() const { return answer_of("pdftotext -bbox '" + path_.string() + "' -"); }

    // Grey, row by row: 0 is black.
    struct Raster {
        int width = 0, height = 0;
        std::string pixels;
        int at(int x, int y) const {
            return static_cast<unsigned char>(
                pixels[static_cast<std::size_t>(y) * static_cast<std::size_t>(width) +
                       static_cast<std::size_t>(x)]);
        }
    };
    Raster raster(int page, int dots_per_inch) const {
        const std::string n = std::to_string(page);
        const std::string pgm = answer_of("pdftoppm -gray -r " + std::to_string(dots_per_inch) + " -f " + n +
                                          " -l " + n + " '" + path_.string() + "'");
        Raster raster;
        int greys = 0, used = 0;
        REQUIRE(std::sscanf(pgm.c_str(), "P5 %d %d %d%n", &raster.width, &raster.height, &greys, &used) == 3);
        raster.pixels = pgm.substr(static_cast<std::size_t>(used) + 1);
        REQUIRE(raster.pixels.size() ==
                static_cast<std::size_t>(raster.width) * static_cast<std::size_t>(raster.height));
        return raster;
    }

private:
    std::filesystem::path path_;
};

}  // namespace printed
