#include "session/say_assembly.h"

#include "session/words.h"

namespace kw {
namespace {

class Sayer {
public:
    explicit Sayer(const Job& job) : job_(job), words_(job.locale.words()) {}

    std::string length(Length value) const { return show_with_unit(value, job_.locale); }

    std::vector<std::string> box(const Squareness& square) const {
        const Length off = abs(square.back_is_right);
        std::vector<std::string> out;
        if (off <= worth_moving) out.push_back(words_("assembly.square", length(off)));
        else
            out.push_back(words_(
                square.push == BoxCorner::back_right ? "assembly.push_back_right" : "assembly.push_back_left",
                length(off), length(square.shorten)));
        if (abs(square.larger_than_expected) > worth_moving)
            out.push_back(
                words_(square.larger_than_expected > Length{} ? "assembly.larger" : "assembly.smaller",
                       length(abs(square.larger_than_expected))));
        return out;
    }

    std::vector<std::string> face(const Hanging& hanging) const {
        std::vector<std::string> out;
        const auto say = [&](Length by, const char* more, const char* less) {
            if (abs(by) >= worth_moving) out.push_back(words_(by > Length{} ? more : less, length(abs(by))));
        };
        say(hanging.to_right, "assembly.to_right", "assembly.to_left");
        say(hanging.left_up, "assembly.left_up", "assembly.left_down");
        say(hanging.right_up, "assembly.right_up", "assembly.right_down");
        say(hanging.left_out, "assembly.left_out", "assembly.left_in");
        say(hanging.right_out, "assembly.right_out", "assembly.right_in");
        if (hanging.left_over >= worth_moving)
            out.push_back(words_("assembly.left_over", length(hanging.left_over)));
        if (out.empty()) out.push_back(words_("assembly.hung"));
        return out;
    }

private:
    const Job& job_;
    const Words& words_;
};

bool nothing_to_move(const Hanging& hanging) {
    for (const Length by : {hanging.to_right, hanging.left_up, hanging.right_up, hanging.left_out,
                            hanging.right_out, hanging.left_over})
        if (abs(by) >= worth_moving) return false;
    return true;
}

}  // namespace

SaidOfAssembly say_assembly(const Job& job, const AssemblyResult& result) {
    const Sayer say(job);
    SaidOfAssembly said;
    said.expected = job.locale.words()("assembly.expected", say.length(result.diagonal));
    if (result.square) {
        said.box = say.box(*result.square);
        said.is_square = abs(result.square->back_is_right) <= worth_moving;
    }
    if (result.not_this_box) {
        said.is_misread = true;
        said.box.push_back(
            Message::say("refused.with_remedy", result.not_this_box->why, result.not_this_box->remedy)
                .text(job.locale));
    }
    if (result.hanging) {
        said.face = say.face(*result.hanging);
        said.is_hung = nothing_to_move(*result.hanging);
    }
    return said;
}

std::string gap_word(const Words& words, std::string_view name) {
    return words(key_of("assembly.gap.", name));
}

}  // namespace kw
