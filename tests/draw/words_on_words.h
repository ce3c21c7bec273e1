#pragma once
// Words that lie on other words.

#include "draw/shapes_of.h"
#include "draw/svg.h"

// Pairs of texts that lie on one another.
inline std::vector<std::string> words_on_words(const kw::draw::Drawing& drawing, const kw::draw::View& view) {
    const auto texts = annotate(drawing, view, kw::draw::paper_text_width).texts;
    std::vector<std::string> pairs;
    for (std::size_t i = 0; i < texts.size(); ++i)
        for (std::size_t j = 0; j < i; ++j)
            if (shapes_of::meet(texts[i].box, texts[j].box))
                pairs.push_back(texts[j].text + " | " + texts[i].text);
    return pairs;
}

inline std::vector<std::string> words_on_words(const kw::draw::Drawing& drawing, double width_px,
                                               double height_px) {
    return words_on_words(drawing, fitted(drawing, width_px, height_px, 1, kw::draw::paper_text_width));
}
