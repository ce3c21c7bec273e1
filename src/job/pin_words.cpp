#include "job/pin_words.h"
#include "words/names.h"

namespace kw {
namespace {

std::vector<std::string> split(std::string text, const std::string& between) {
    std::vector<std::string> pieces;
    for (;;) {
        const std::size_t end = text.find(between);
        pieces.push_back(text.substr(0, end));
        if (end == std::string::npos) return pieces;
        text.erase(0, end + between.size());
    }
}

// "slot", "rip fence", "fence 6.35 mm", "for 12.7 mm": a name, or one with a length behind it.
Message said_piece(const std::string& piece) {
    const std::size_t length = piece.find_first_of("0123456789");
    if (length == std::string::npos || length < 2) return Message::name("job.pin.", piece);
    return Message::name("job.pin.", piece.substr(0, length - 1)) + Message::of(piece.substr(length - 1));
}

Message said_pieces(const std::string& segment) {
    std::vector<Message> said;
    for (const std::string& piece : split(segment, ", ")) said.push_back(said_piece(piece));
    return Message::list(said, "list.comma");
}

// "locking rabbet, slot"
Message said_joint(const std::string& segment) {
    const std::size_t comma = segment.find(", ");
    const Message joint = Message::shown(work_word, segment.substr(0, comma));
    return comma == std::string::npos ? joint
                                      : joint + Message::of(", ") + said_pieces(segment.substr(comma + 2));
}

}  // namespace

Message said_pin(const std::string& pin) {
    // A group's key: the joint; machine and cutter; settings; guide and board.
    if (const auto segments = split(pin, "; "); segments.size() == 4)
        return Message::of(said_joint(segments[0]), "; ", segments[1], "; ", said_pieces(segments[2]), "; ",
                           said_pieces(segments[3]));
    const std::size_t on = pin.find(" on "), from = pin.rfind(", from ");
    if (on == std::string::npos || from == std::string::npos || from < on + 4) return Message::of(pin);
    return Message::say("job.pin.on_from", Message::shown(work_word, pin.substr(0, on)),
                        pin.substr(on + 4, from - on - 4), pin.substr(from + 7));
}

}  // namespace kw
