#include "command/shop.h"

#include <cstdlib>
#include <filesystem>

#include "session/words.h"

namespace kw {
namespace {

// To a caliper's step.
Graduation shown_in(Unit unit) { return unit == Unit::inch ? Graduation::in_001 : Graduation::mm_0_01; }

// Of what is a length and not a share of a move: " (0.005 in)"; of a cutter how wide it cuts.
std::string also_in_inches(const Believed& belief) {
    if (belief.what == Taught::fence_gain || belief.what == Taught::height_gain) return {};
    const Length beyond = Length::nearest_mm(belief.value);
    const Length said = belief.what == Taught::kerf ? belief.kerf + beyond : abs(beyond);
    return " (" + show_with_unit(said, Graduation::in_001) + ")";
}

using Changed = tl::expected<Memory, Problem>;

tl::expected<Believed, Problem> numbered(const std::vector<Believed>& all, int number) {
    if (number >= 1 && number <= int(all.size())) return all[std::size_t(number - 1)];
    return tl::unexpected(Problem{"", Message::of("there is no number ", number),
                                  Message::of("`kerfwright shop` lists ", int(all.size()))});
}

// As it reads in the shop's unit; where nobody has said which that is, the unit must stand beside the number.
tl::expected<Length, Problem> asked_length(const std::string& text, std::optional<Unit> unit) {
    const auto length = read_length(text, unit.value_or(Unit::millimetre));
    if (!length)
        return tl::unexpected(Problem{"", Message::of("--correct: ", length.error().message),
                                      Message::of("write NUMBER=LENGTH")});
    if (!unit && *length != read_length(text, Unit::inch).value_or(*length))
        return tl::unexpected(Problem{"", Message::of("--correct: ", text, " of what?"),
                                      Message::of("write the unit, as in ", text, " in or ", text, " mm")});
    return *length;
}

Changed corrected(const Memory& memory, const std::string& asked, std::optional<Unit> unit,
                  const std::string& now) {
    const std::size_t equals = asked.find('=');
    const auto what = numbered(believed(memory, now), std::atoi(asked.substr(0, equals).c_str()));
    if (!what) return tl::unexpected(what.error());
    if (what->what == Taught::fence_gain || what->what == Taught::height_gain)
        return tl::unexpected(
            Problem{"", Message::of("how long moves come out is no length, and can't be corrected so"),
                    Message::of("forget it with --forget")});
    const auto length = asked_length(equals == std::string::npos ? "" : asked.substr(equals + 1), unit);
    if (!length) return tl::unexpected(length.error());
    if (abs(*length) > Length::millimetres(3))
        return tl::unexpected(
            Problem{"", Message::of("a scale that is ", *length, " off is set right, not remembered"),
                    Message::of("at most ", Length::millimetres(3))});
    return correct(memory, *what, length->mm(), now);
}

Changed changed(const ShopAsked& asked, Memory memory, const std::string& now) {
    if (asked.forget != 0) {
        const auto what = numbered(believed(memory, now), asked.forget);
        if (!what) return tl::unexpected(what.error());
        memory = forget(std::move(memory), *what);
    }
    return asked.correct.empty() ? Changed(std::move(memory))
                                 : corrected(memory, asked.correct, asked.unit, now);
}

}  // namespace

int refuse_shop(const std::string& file, const Problem& problem, const CommandIo& io, Unit unit) {
    io.err << file << ": " << problem.pointer << (problem.pointer.empty() ? "" : ": ")
           << problem.why.text(shown_in(unit)) << "; " << problem.remedy.text(shown_in(unit)) << "\n";
    return 1;
}

int run_shop(const ShopAsked& asked, const ShopFile& shop, const CommandIo& io, const std::string& now) {
    const auto before = read_memory(shop.json);
    const Unit unit = asked.unit.value_or(Unit::millimetre);
    if (!before) return refuse_shop(asked.file, before.error().front(), io, unit);
    const auto after = changed(asked, *before, now);
    if (!after) return refuse_shop(asked.file, after.error(), io, unit);
    if (*after != *before) {
        if (const auto saved = save_shop_file(asked.file, shop, with_memory(shop.json, *after)); !saved) {
            io.err << report(asked.file, {}, saved.error());
            return 1;
        }
    }
    const auto all = believed(*after, now);
    if (all.empty()) io.out << "Nothing is learned yet: each lock teaches how far the scales are off.\n";
    for (std::size_t i = 0; i < all.size(); ++i)
        io.out << i + 1 << "  " << say_belief(all[i], shown_in(unit))
               << (asked.unit ? "" : also_in_inches(all[i])) << "\n";
    return 0;
}

}  // namespace kw
