#include "session/say_assembly.h"

#include "session/words.h"

namespace kw {
namespace {

// How far an end of a slide may stand off its height; common practice, no source.
constexpr Length slide_feels = Length::inches(1, 32);

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

    // What is off by as much as a slide feels.
    std::vector<std::string> slides(const SlidesHung& hung, Length take_up) const {
        constexpr const char* up[] = {"assembly.left_slide_front_up", "assembly.left_slide_rear_up",
                                      "assembly.right_slide_front_up", "assembly.right_slide_rear_up"};
        constexpr const char* down[] = {"assembly.left_slide_front_down", "assembly.left_slide_rear_down",
                                        "assembly.right_slide_front_down", "assembly.right_slide_rear_down"};
        std::vector<std::string> out;
        for (std::size_t i = 0; i < hung.up.size(); ++i)
            if (abs(hung.up[i]) >= slide_feels)
                out.push_back(words_(hung.up[i] > Length{} ? up[i] : down[i], length(abs(hung.up[i]))));
        const Length wider = hung.wider_in_front.value_or(Length{});
        if (abs(wider) > max(2 * take_up, worth_moving))
            out.push_back(
                words_(wider > Length{} ? "assembly.slides_wider_in_front" : "assembly.slides_wider_behind",
                       length(abs(wider)), length(abs(wider).scaled(1, 2))));
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
        return out;
    }

private:
    const Job& job_;
    const Words& words_;
};

// Whether where it stands and how it is turned was read.
bool is_told(const Gaps& gaps) {
    using P = GapPlace;
    const auto has = [&](P place) { return gaps.at(place).has_value(); };
    const bool beside = has(P::left_top) || has(P::left_bottom) || has(P::right_top) || has(P::right_bottom);
    return beside &&
           ((has(P::top_left) && has(P::top_right)) || (has(P::bottom_left) && has(P::bottom_right)));
}

}  // namespace

SaidOfAssembly say_assembly(const Job& job, const AssemblyResult& result) {
    const Sayer say(job);
    SaidOfAssembly said;
    said.expected = result.is_as_planned
                        ? job.locale.words()("assembly.expected", say.length(result.diagonal))
                        : job.locale.words()("assembly.expected_as_cut", say.length(result.diagonal),
                                             say.length(result.box.front), say.length(result.box.back),
                                             say.length(result.box.left), say.length(result.box.right));
    if (result.square) {
        said.box = say.box(*result.square);
        said.is_to_be_pushed = abs(result.square->back_is_right) > worth_moving;
        said.is_square = abs(result.square->back_is_right) <= worth_moving;
    }
    if (result.is_half_read) said.box.push_back(job.locale.words()("assembly.other_too"));
    if (result.not_this_box) {
        said.is_misread = true;
        said.box.push_back(
            Message::say("refused.with_remedy", result.not_this_box->why, result.not_this_box->remedy)
                .text(job.locale));
    }
    if (result.slides) {
        said.slides = say.slides(*result.slides, result.slide_take_up);
        said.are_slides_to_be_set = !said.slides.empty();
        said.are_slides_true = said.slides.empty() && result.slides->is_compared;
        if (said.slides.empty())
            said.slides.push_back(job.locale.words()(said.are_slides_true ? "assembly.slides_true"
                                                                          : "assembly.other_slide_end"));
    }
    if (result.hanging) {
        said.face = say.face(*result.hanging);
        said.is_to_be_moved = !said.face.empty();
        said.is_hung = !said.is_to_be_moved && is_told(result.gaps);
        if (!said.is_to_be_moved)
            said.face.push_back(job.locale.words()(said.is_hung ? "assembly.hung" : "assembly.hung_so_far"));
    }
    return said;
}

std::string gap_word(const Words& words, std::string_view name) {
    return words(key_of("assembly.gap.", name));
}

}  // namespace kw
