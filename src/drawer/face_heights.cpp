#include "drawer/face_heights.h"

#include <algorithm>
#include <numeric>

namespace kw {
namespace {

using Heights = tl::expected<HeightsOfFaces, Refusal>;

// Whole ticks, down also below nothing.
Length share_of(Length whole, std::int64_t over, std::int64_t under) {
    const std::int64_t times = whole.ticks() * over;
    return Length::from_ticks(times / under - (times % under < 0 ? 1 : 0));
}

tl::unexpected<Refusal> refused(std::string field, Message why, Message remedy) {
    return tl::unexpected(Refusal{std::move(field), std::move(why), std::move(remedy)});
}

// What the heights leave of what there is for them.
Heights filled(HeightsOfFaces heights, Length for_faces) {
    heights.left_over = std::accumulate(heights.all.begin(), heights.all.end(), for_faces,
                                        [](Length rest, Length height) { return rest - height; });
    return heights;
}

Heights in_proportion(const BankAsk& ask, Length for_faces, bool equal) {
    std::int64_t parts = 0;
    for (const BankRow& row : ask.rows) parts += equal ? 1 : row.parts;
    HeightsOfFaces heights;
    for (const BankRow& row : ask.rows) {
        heights.all.push_back(share_of(for_faces, equal ? 1 : row.parts, parts));
        if (heights.all.back() < least_face)
            return refused(equal ? "opening" : "parts", Message::say("bank.no_face", for_faces, row.drawer),
                           Message::say("bank.face_at_least", least_face));
    }
    return filled(std::move(heights), for_faces);
}

// n h + step n (n - 1) / 2 = S
Heights graduated(const BankAsk& ask, Length for_faces) {
    const auto n = static_cast<std::int64_t>(ask.rows.size());
    const std::int64_t steps = n * (n - 1) / 2;
    HeightsOfFaces heights;
    if (n == 1) {
        heights.all = {for_faces};
        return filled(std::move(heights), for_faces);
    }
    if (ask.step.has_value() == ask.top_face.has_value())
        return refused(ask.step ? "top_face" : "step",
                       Message::say(ask.step ? "bank.step_and_top" : "bank.no_step"),
                       Message::say(ask.step ? "bank.leave_one_out" : "bank.write_step"));
    Length top;
    if (ask.step) {
        heights.step = *ask.step;
        top = share_of(for_faces - steps * *ask.step, 1, n);
        if (top < least_face)
            return refused("step", Message::say("bank.step_too_large", *ask.step, max(top, Length{})),
                           Message::say("bank.step_at_most",
                                        max(share_of(for_faces - n * least_face, 1, steps), Length{})));
    } else {
        top = *ask.top_face;
        heights.step = share_of(for_faces - n * top, 1, steps);
        if (heights.step < Length{} || top < least_face)
            return refused(
                "top_face",
                Message::say(top < least_face ? "bank.face_too_low" : "bank.top_too_high", top, for_faces),
                top < least_face ? Message::say("bank.face_at_least", least_face)
                                 : Message::say("bank.at_most", share_of(for_faces, 1, n)));
    }
    for (std::int64_t i = 0; i < n; ++i) heights.all.push_back(top + i * heights.step);
    return filled(std::move(heights), for_faces);
}

Heights given(const BankAsk& ask, Length for_faces) {
    HeightsOfFaces heights;
    std::optional<std::size_t> open;
    Length rest = for_faces;
    for (std::size_t i = 0; i < ask.rows.size(); ++i) {
        const std::optional<Length>& face = ask.rows[i].face;
        const std::string field = "face_heights/" + std::to_string(i);
        if (!face && open)
            return refused(field, Message::say("bank.two_faces_open"), Message::say("bank.give_the_others"));
        if (!face) open = i;
        else if (*face < least_face)
            return refused(field, Message::say("bank.face_too_low", *face),
                           Message::say("bank.face_at_least", least_face));
        heights.all.push_back(face.value_or(Length{}));
        rest -= heights.all.back();
    }
    if (open && rest < least_face)
        return refused("face_heights/" + std::to_string(*open),
                       Message::say("bank.no_rest", for_faces - rest, for_faces),
                       Message::say("bank.others_lower", least_face - rest));
    // A column that follows from openings as they were read is as far off as they are.
    const Length bearable =
        ask.height || !ask.rail ? Length{} : static_cast<std::int64_t>(ask.rows.size()) * near_enough;
    if (open) heights.all[*open] = rest;
    else if (abs(rest) > bearable)
        return refused("face_heights",
                       Message::say(rest > Length{} ? "bank.faces_short" : "bank.faces_over",
                                    for_faces - rest, for_faces, abs(rest)),
                       Message::say(rest > Length{} ? "bank.one_higher" : "bank.one_lower", abs(rest)));
    return filled(std::move(heights), for_faces);
}

Heights by_opening(const BankAsk& ask, Length for_faces, const std::vector<Length>& openings) {
    if (!ask.rail) return refused("heights", Message::say("bank.no_rails"), Message::say("bank.write_rail"));
    if (openings.empty())
        return refused("heights", Message::say("bank.openings_unknown"),
                       Message::say("bank.measure_openings"));
    const bool overlay = ask.style == FaceStyle::overlay;
    const Length free = *ask.rail - ask.reveal, below = Length::from_ticks(free.ticks() / 2);
    const Length inner_top = overlay ? free - below : -ask.reveal,
                 inner_bottom = overlay ? below : -ask.reveal;
    const Length end_top = overlay ? ask.ends.top : -ask.ends.top,
                 end_bottom = overlay ? ask.ends.bottom : -ask.ends.bottom;
    HeightsOfFaces heights;
    for (std::size_t i = 0; i < openings.size(); ++i) {
        heights.all.push_back(openings[i] + (i == 0 ? end_top : inner_top) +
                              (i + 1 == openings.size() ? end_bottom : inner_bottom));
        if (heights.all.back() < least_face)
            return refused("reveal", Message::say("bank.no_face_in_opening", ask.rows[i].drawer, openings[i]),
                           Message::say("bank.less_there"));
    }
    return filled(std::move(heights), for_faces);
}

}  // namespace

tl::expected<HeightsOfFaces, Refusal> face_heights(const BankAsk& ask, Length for_faces,
                                                   const std::vector<Length>& openings) {
    switch (ask.heights) {
        case FaceHeights::equal: return in_proportion(ask, for_faces, true);
        case FaceHeights::graduated: return graduated(ask, for_faces);
        case FaceHeights::in_proportion: return in_proportion(ask, for_faces, false);
        case FaceHeights::given: return given(ask, for_faces);
        case FaceHeights::by_opening: return by_opening(ask, for_faces, openings);
    }
    return refused("heights", {}, {});
}

}  // namespace kw
