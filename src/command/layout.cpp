#include "command/layout.h"

#include "command/breaking.h"
#include "command/job_command.h"
#include "command/pages.h"
#include "file/shop_file.h"
#include "session/say_layout.h"
#include "session/words.h"

namespace kw {
namespace {

std::string stock_text(const Work& work, const LaidStock& laid) {
    const Job& job = work.job;
    std::string out = laid.stock + ": " + say_layout(job, laid) + "\n";
    for (const std::string& buy : say_to_buy(job, laid)) out += "  buy " + buy + "\n";
    const std::vector<StockSize>& sizes = job.stock_named(laid.stock)->sizes;
    for (std::size_t i = 0; i < laid.pieces.size(); ++i) {
        const LaidPiece& piece = laid.pieces[i];
        out += "\n  " + std::to_string(i + 1) + ". " + say_size(job, sizes[piece.size]) + "\n";
        for (const SaidCut& said : say_cuts(job, laid, piece)) {
            out += "     " + said.cut + "\n";
            if (!said.caution.empty()) out += "        " + said.caution + "\n";
        }
        for (std::size_t p = 0; p < piece.parts.size(); ++p)
            out += "     [ ] " + std::to_string(p + 1) + "  " + piece.parts[p].part + "  " +
                   say_place(job, piece.parts[p]) + "\n";
        for (const cutting::Rectangle& offcut : piece.offcuts)
            out += "     keep " + show(offcut.length, job.locale) + " × " +
                   show_with_unit(offcut.width, job.locale) + "\n";
    }
    const std::vector<std::string> settings = say_settings(job, laid);
    if (!settings.empty()) out += "\n";
    for (std::size_t i = 0; i < settings.size(); ++i)
        out += (i == 0 ? "  " : "     [ ] ") + settings[i] + "\n";
    return out + "\n";
}

Json rectangle_json(const cutting::Rectangle& area) {
    return {{"x_mm", area.x.mm()},
            {"y_mm", area.y.mm()},
            {"length_mm", area.length.mm()},
            {"width_mm", area.width.mm()}};
}

Json settings_json(const LaidStock& laid) {
    Json all = Json::array();
    for (const LaidSetting& setting : laid.settings) {
        Json one = {{"direction", word_of(setting.direction)}, {"fence_mm", setting.fence.mm()}};
        one["cuts"] = cut_places_json(setting);
        all.push_back(std::move(one));
    }
    return all;
}

Json ids_json(const LaidPiece& piece, const std::vector<std::size_t>& parts) {
    Json names = Json::array();
    for (const std::size_t part : parts) names.push_back(piece.parts[part].part);
    return names;
}

// What lies beside the blade: "part", "further cut", "offcut" or "waste".
Json side_json(const LaidPiece& piece, const std::optional<CutSide>& side) {
    if (!side) return nullptr;
    const char* use = side->use == cutting::CutUse::piece    ? "part"
                      : side->use == cutting::CutUse::cut    ? "further cut"
                      : side->use == cutting::CutUse::offcut ? "offcut"
                                                             : "waste";
    return {{"use", use}, {"parts", ids_json(piece, side->parts)}};
}

Json piece_json(const Stock& stock, const LaidPiece& piece) {
    const StockSize& size = stock.sizes[piece.size];
    Json json = {{"size", piece.size}, {"length_mm", size.length.mm()}};
    json["width_mm"] = size.width ? Json(size.width->mm()) : Json(nullptr);
    json["offcut"] = size.is_offcut;
    json["parts"] = Json::array();
    for (const LaidPart& part : piece.parts) {
        Json one = rectangle_json(part.area);
        one["part"] = part.part;
        one["turned"] = part.is_turned;
        json["parts"].push_back(std::move(one));
    }
    json["cuts"] = Json::array();
    for (const LaidCut& cut : piece.cuts) {
        Json one = {{"direction", word_of(cut.direction)},
                    {"fence_mm", cut.fence.mm()},
                    {"of", rectangle_json(cut.of)},
                    {"frees", ids_json(piece, cut.frees)},
                    {"strip_for", ids_json(piece, cut.strip_for)}};
        one["at_fence"] = side_json(piece, cut.at_fence);
        one["beyond"] = side_json(piece, cut.beyond);
        one["after"] = cut.after < 0 ? Json(nullptr) : Json(cut.after);
        one["too_short_mm"] = cut.too_short ? Json(cut.too_short->mm()) : Json(nullptr);
        json["cuts"].push_back(std::move(one));
    }
    json["offcuts"] = Json::array();
    for (const cutting::Rectangle& offcut : piece.offcuts) json["offcuts"].push_back(rectangle_json(offcut));
    return json;
}

std::string layout_json(const Work& work, const LayOut& layout) {
    Json json = {{"format", "kerfwright-layout"},
                 {"version", 1},
                 {"job", work.job.name},
                 {"kerf_mm", layout_kerf(work.job).mm()}};
    json["cut_already"] = layout.cut_already;
    json["freed"] = freed_json(layout.freed);
    json["freed_too_small"] = freed_json(layout.too_small);
    json["stock"] = Json::array();
    for (const LaidStock& laid : layout.stocks) {
        Json one = {{"stock", laid.stock}, {"proved", laid.proved}, {"yield", laid.yield}};
        if (laid.is_in_money) {
            one["cost"] = double(laid.cost) / 100.0;
            one["least_cost"] = double(laid.least_cost) / 100.0;
        } else {
            one["bought"] = laid.cost;
            one["least_bought"] = laid.least_cost;
        }
        one["pieces"] = Json::array();
        for (const LaidPiece& piece : laid.pieces)
            one["pieces"].push_back(piece_json(*work.job.stock_named(laid.stock), piece));
        one["settings"] = settings_json(laid);
        one["least_settings"] = laid.least_settings;
        json["stock"].push_back(std::move(one));
    }
    return json.dump(2) + "\n";
}

class LayoutCommand : JobCommand {
public:
    using JobCommand::JobCommand;

    int run() const {
        const Speaks speaks = options_.out.empty() ? Speaks::english : Speaks::as_the_window;
        return with_work(
            [&](const Opened& opened) {
                const Work& work = *opened.session.work;
                const LayOut layout = lay_out(work.job, work.plan, work.standing);
                for (const LaidStock& laid : layout.stocks)
                    if (laid.cannot)
                        tell(opened.text, to_file_error(*laid.cannot, opened.text, work.job.locale));
                const bool any_refused =
                    std::any_of(layout.stocks.begin(), layout.stocks.end(),
                                [](const LaidStock& laid) { return laid.cannot.has_value(); });
                // A file must have all of it; in text the others can be cut all the same.
                if (any_refused && (options_.json || !options_.out.empty())) return 1;
                const bool all_cut = layout.without_size.empty() && !layout.cut_already.empty();
                if (layout.stocks.empty() && !all_cut) return refuse(say_nothing_laid_out(work.job, layout));
                if (!options_.out.empty())
                    return write_pages(work, read_preferences(opened.shop),
                                       {print::PagesOf::layout, options_.out, options_.paper, layout}, io_);
                if (options_.json) {
                    io_.out << layout_json(work, layout);
                    return 0;
                }
                const std::string already = say_cut_already(work.job, layout);
                if (!already.empty()) io_.out << already << "\n\n";
                const std::vector<std::string> freed = say_freed(work.job, work.plan, layout);
                for (const std::string& said : freed) io_.out << said << "\n";
                if (!freed.empty()) io_.out << "\n";
                if (layout.stocks.empty()) io_.out << say_nothing_laid_out(work.job, layout) << "\n";
                for (const LaidStock& laid : layout.stocks)
                    if (!laid.cannot) io_.out << stock_text(work, laid);
                for (const std::string& stock : layout.without_size)
                    io_.out << work.job.locale.words()("layout.no_size_of", stock) << "\n";
                return any_refused ? 1 : 0;
            },
            speaks);
    }
};

}  // namespace

int run_layout(const Options& options, const CommandIo& io) { return LayoutCommand(options, io).run(); }

}  // namespace kw
