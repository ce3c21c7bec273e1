#include "job/banks.h"

#include <algorithm>

namespace kw {

std::optional<PartSize> face_size(const DrawerSpec& drawer, Length thickness) {
    const FaceSpec& face = drawer.face;
    if (face.in_bank) return PartSize{Role::face, face.in_bank->width, face.in_bank->height, thickness};
    if (!drawer.opening) return std::nullopt;
    return size_face(face_opening(drawer),
                     {face.style, face.left, face.right, face.top, face.bottom, thickness});
}

namespace {

class BankHanger {
public:
    BankHanger(Job& job, std::vector<Problem>& problems) : job_(job), problems_(problems) {}

    void run() {
        find_rows();
        if (!problems_.empty()) return;
        for (std::size_t i = 0; i < job_.banks.size(); ++i) {
            find_ends(i);
            make(i);
        }
        if (problems_.empty()) hang();
    }

private:
    std::string at(std::size_t bank, const std::string& field) const {
        return "/banks/" + std::to_string(bank) + "/" + field;
    }

    void blame(std::string pointer, Message why, Message remedy) {
        problems_.push_back({std::move(pointer), std::move(why), std::move(remedy)});
    }

    std::optional<std::size_t> drawer_named(const std::string& name) const {
        for (std::size_t i = 0; i < job_.drawers.size(); ++i)
            if (job_.drawers[i].name == name) return i;
        return std::nullopt;
    }

    // A drawer that is named once, in all banks, stands there with all its copies.
    void find_rows() {
        std::vector<int> named(job_.drawers.size()), placed(job_.drawers.size());
        for (const BankSpec& bank : job_.banks)
            for (const std::string& name : bank.drawers)
                if (const auto drawer = drawer_named(name)) ++named[*drawer];
        for (std::size_t i = 0; i < job_.banks.size(); ++i) {
            BankSpec& bank = job_.banks[i];
            for (std::size_t j = 0; j < bank.drawers.size(); ++j) {
                const std::string field = at(i, "drawers/" + std::to_string(j));
                const auto drawer = drawer_named(bank.drawers[j]);
                if (!drawer) {
                    blame(field, Message::say("bank.no_drawer", bank.drawers[j]),
                          Message::say("bank.name_a_drawer"));
                    continue;
                }
                const int count = job_.drawers[*drawer].count, copies = named[*drawer] == 1 ? count : 1;
                if (placed[*drawer] + copies > count) {
                    blame(field, Message::say("bank.named_too_often", bank.drawers[j], count, named[*drawer]),
                          Message::say("bank.once_or_each", count));
                    continue;
                }
                for (int copy = 0; copy < copies; ++copy) bank.rows.push_back({*drawer, ++placed[*drawer]});
            }
        }
        for (std::size_t i = 0; i < job_.banks.size(); ++i) check_rows(i, named, placed);
    }

    void check_rows(std::size_t i, const std::vector<int>& named, const std::vector<int>& placed) {
        const BankSpec& bank = job_.banks[i];
        for (std::size_t j = 0; j < bank.drawers.size(); ++j) {
            const auto drawer = drawer_named(bank.drawers[j]);
            if (drawer && placed[*drawer] < job_.drawers[*drawer].count)
                blame(at(i, "drawers/" + std::to_string(j)),
                      Message::say("bank.named_too_seldom", bank.drawers[j], job_.drawers[*drawer].count,
                                   named[*drawer]),
                      Message::say("bank.once_or_each", job_.drawers[*drawer].count));
        }
        const auto rows = static_cast<int>(bank.rows.size());
        if (bank.heights == FaceHeights::given && bank.face_heights.size() != bank.rows.size())
            blame(at(i, "face_heights"),
                  Message::say("bank.heights_for_rows", static_cast<int>(bank.face_heights.size()), rows),
                  Message::say("bank.one_for_each", rows));
        if (bank.heights == FaceHeights::in_proportion && bank.parts.size() != bank.rows.size())
            blame(at(i, "parts"),
                  Message::say("bank.parts_for_rows", static_cast<int>(bank.parts.size()), rows),
                  Message::say("bank.one_for_each", rows));
    }

    void find_ends(std::size_t i) {
        BankSpec& bank = job_.banks[i];
        const auto end = [&](const char* field, const std::optional<Length>& own,
                             const std::optional<Length>& beside, const std::optional<Length>& edge) {
            if (own) return *own;
            if (beside) return *beside;
            if (bank.style == FaceStyle::inset) return bank.reveal;
            if (edge) return max(Length{}, *edge - bank.reveal);
            blame(at(i, field), Message::say("bank.how_far", Message::name("bank.end.", field)),
                  Message::say("bank.write_overlay", Message::name("bank.end.", field)));
            return Length{};
        };
        bank.ends = {end("left", bank.left, {}, bank.edges.left),
                     end("right", bank.right, {}, bank.edges.right),
                     end("top", bank.top, bank.beside_top, bank.edges.top),
                     end("bottom", bank.bottom, bank.beside_bottom, bank.edges.bottom)};
    }

    void find_narrowest(BankSpec& bank) const {
        bank.least_width = *bank.width;
        for (std::size_t row = 0; row < bank.rows.size(); ++row) {
            const DrawerSpec& drawer = job_.drawers[bank.rows[row].drawer];
            if (!drawer.opening || drawer.box || face_opening(drawer).width >= bank.least_width) continue;
            bank.least_width = face_opening(drawer).width;
            bank.narrowest = row;
        }
    }

    void make(std::size_t i) {
        BankSpec& bank = job_.banks[i];
        if (!problems_.empty()) return;
        find_narrowest(bank);
        BankAsk ask{bank.style, width_faced(bank), bank.height, bank.rail,     bank.reveal, bank.ends,
                    bank.edges, bank.heights,      bank.step,   bank.top_face, {}};
        for (std::size_t row = 0; row < bank.rows.size(); ++row) {
            const DrawerSpec& drawer = job_.drawers[bank.rows[row].drawer];
            BankRow& asked = ask.rows.emplace_back();
            asked.drawer = row_name(job_, bank, row);
            if (drawer.opening && drawer.opening->height > Length{}) asked.opening = drawer.opening->height;
            if (row < bank.face_heights.size()) asked.face = bank.face_heights[row];
            if (row < bank.parts.size()) asked.parts = bank.parts[row];
        }
        auto made = make_bank(ask);
        if (made) {
            bank.made = std::move(*made);
            return check_alike(i);
        }
        for (Refusal& refusal : made.error())
            blame(pointer_of(i, refusal.field), std::move(refusal.why), std::move(refusal.remedy));
    }

    std::string pointer_of(std::size_t i, const std::string& field) const {
        const std::string openings = "openings/";
        if (field.rfind(openings, 0) != 0) return at(i, field);
        const auto row = static_cast<std::size_t>(std::stoul(field.substr(openings.size())));
        return "/drawers/" + std::to_string(job_.banks[i].rows[row].drawer) + "/opening/height";
    }

    // Drawers of one name are alike, their faces too.
    void check_alike(std::size_t i) {
        const BankSpec& bank = job_.banks[i];
        for (std::size_t row = 0; row < bank.rows.size(); ++row)
            for (std::size_t j = 0; j <= i; ++j)
                for (std::size_t other = 0; other < job_.banks[j].rows.size(); ++other) {
                    if ((j == i && other >= row) || job_.banks[j].rows[other].drawer != bank.rows[row].drawer)
                        continue;
                    const Bank& made = job_.banks[j].made;
                    const Length height = bank.made.faces[row].height, width = bank.made.face_width;
                    if (made.faces[other].height == height && made.face_width == width) continue;
                    const bool in_height = made.faces[other].height != height;
                    return blame(at(i, in_height ? "heights" : "opening/width"),
                                 Message::say(in_height ? "bank.not_alike_high" : "bank.not_alike_wide",
                                              job_.drawers[bank.rows[row].drawer].name,
                                              in_height ? made.faces[other].height : made.face_width,
                                              in_height ? height : width),
                                 Message::say("bank.own_names"));
                }
    }

    void hang() {
        for (const BankSpec& bank : job_.banks)
            for (std::size_t row = 0; row < bank.rows.size(); ++row) hang(bank, row);
    }

    void hang(const BankSpec& bank, std::size_t row) {
        DrawerSpec& drawer = job_.drawers[bank.rows[row].drawer];
        const BankFace& face = bank.made.faces[row];
        FaceSpec& spec = drawer.face;
        spec.style = bank.style;
        spec.reveal = bank.reveal;
        if (!spec.in_bank) {
            spec.in_bank = FaceInBank{bank.made.face_width, face.height, {}};
            if (drawer.opening) drawer.opening->height = face.opening_height;
        }
        Margins gaps = gaps_of(bank, row);
        if (bank.style == FaceStyle::inset && drawer.opening && !drawer.box) {
            const Length wider = face_opening(drawer).width - bank.least_width;
            gaps.left += wider.scaled(1, 2);
            gaps.right += wider - wider.scaled(1, 2);
        }
        spec.in_bank->gaps.push_back(gaps);
        if (drawer.opening) drawer.opening->height = min(drawer.opening->height, face.opening_height);
        if (drawer.opening && drawer.face_opening) drawer.face_opening->height = drawer.opening->height;
        if (drawer.box) check_box(drawer, bank, row);
        else check_width(drawer, bank, row);
    }

    // An opening may be a little wider or narrower than the column was read: its face must cover it, or be one width with the others.
    void check_width(const DrawerSpec& drawer, const BankSpec& bank, std::size_t row) {
        const Length width = face_opening(drawer).width, over = width - *bank.width;
        const std::string field = "/drawers/" + std::to_string(bank.rows[row].drawer) + "/opening/width";
        if (bank.style == FaceStyle::overlay && over > min(bank.ends.left, bank.ends.right))
            blame(field, Message::say("bank.opening_too_wide", width, bank.made.face_width),
                  Message::say("bank.as_wide_as", *bank.width));
        if (-over > too_far_apart)
            blame(field, Message::say("bank.opening_far_narrower", width, *bank.width),
                  Message::say("bank.as_wide_as", *bank.width));
    }

    // A box that is given must pass.
    void check_box(const DrawerSpec& drawer, const BankSpec& bank, std::size_t row) {
        const std::string field = "/drawers/" + std::to_string(bank.rows[row].drawer) + "/box/";
        const Length height = bank.made.faces[row].opening_height;
        if (drawer.box->height >= height)
            blame(field + "height", Message::say("bank.box_too_high", drawer.box->height, height),
                  Message::say("bank.box_less_than", height));
        if (drawer.box->width >= *bank.width)
            blame(field + "width", Message::say("bank.box_too_wide", drawer.box->width, *bank.width),
                  Message::say("bank.box_less_than", *bank.width));
    }

    // To what is beside it: the next face, the rail or the case; an overlay face keeps the reveal where it is not told how far the case goes.
    static Margins gaps_of(const BankSpec& bank, std::size_t row) {
        if (bank.style == FaceStyle::inset)
            return {bank.ends.left, bank.ends.right, row == 0 ? bank.ends.top : bank.reveal,
                    row + 1 == bank.rows.size() ? bank.ends.bottom : bank.reveal};
        const auto gap = [&](const std::optional<Length>& edge, Length over) {
            return edge && *edge > over ? *edge - over : bank.reveal;
        };
        return {gap(bank.edges.left, bank.ends.left), gap(bank.edges.right, bank.ends.right),
                row == 0 ? gap(bank.edges.top, bank.ends.top) : bank.reveal,
                row + 1 == bank.rows.size() ? gap(bank.edges.bottom, bank.ends.bottom) : bank.reveal};
    }

    Job& job_;
    std::vector<Problem>& problems_;
};

}  // namespace

void hang_in_banks(Job& job, std::vector<Problem>& problems) { BankHanger(job, problems).run(); }

Length width_faced(const BankSpec& bank) {
    return bank.style == FaceStyle::inset ? bank.least_width : *bank.width;
}

std::string row_name(const Job& job, const BankSpec& bank, std::size_t row) {
    return copy_name(job.drawers[bank.rows[row].drawer], bank.rows[row].copy);
}

const BankSpec* bank_of(const std::vector<BankSpec>& banks, const std::string& drawer) {
    const auto found = std::find_if(banks.begin(), banks.end(), [&](const BankSpec& bank) {
        return std::find(bank.drawers.begin(), bank.drawers.end(), drawer) != bank.drawers.end();
    });
    return found == banks.end() ? nullptr : &*found;
}

std::vector<OutOfLine> out_of_line(const BankSpec& bank) {
    std::vector<OutOfLine> out;
    // An overlay reaches further up the more it is, a gap the less.
    const int up = bank.style == FaceStyle::overlay ? 1 : -1;
    if (bank.beside_top && *bank.beside_top != bank.ends.top)
        out.push_back({up * (bank.ends.top - *bank.beside_top), *bank.beside_top, true});
    if (bank.beside_bottom && *bank.beside_bottom != bank.ends.bottom)
        out.push_back({-up * (bank.ends.bottom - *bank.beside_bottom), *bank.beside_bottom, false});
    return out;
}

}  // namespace kw
