#include "setup/work_words.h"

#include <algorithm>

namespace kw {
namespace {

// "pass 1 of 2"
Message said_pass(std::string_view piece) {
    constexpr std::string_view begin = "pass ", between = " of ";
    const std::size_t of = piece.find(between);
    if (piece.substr(0, begin.size()) != begin || of == std::string_view::npos)
        return Message::name("work.", piece);
    return Message::say("work.pass_of", piece.substr(begin.size(), of - begin.size()),
                        piece.substr(of + between.size()));
}

}  // namespace

Message said_work(std::string_view work) {
    Message said;
    for (;;) {
        const std::size_t colon = work.find(": "), comma = work.find(", ");
        const std::size_t end = std::min(colon, comma);
        said = said + said_pass(work.substr(0, end));
        if (end == std::string_view::npos) return said;
        said = said + (end == colon ? Message::of(": ") : Message::say("list.comma"));
        work.remove_prefix(end + 2);
    }
}

}  // namespace kw
