#include "command/job_command.h"

#include <ctime>

#include "command/shop.h"
#include "file/kept_layout.h"
#include "file/shop_file.h"

namespace kw {
namespace {

// The unit may be all that could be read.
Graduation graduation_of(const Session& session) {
    const Json& document = session.document;
    const bool inch = !document.is_object() || !document.contains("unit") || document["unit"] == "in";
    return inch ? Graduation::in_64 : Graduation::mm_0_1;
}

}  // namespace

std::string utc_now() {
    const std::time_t now = std::time(nullptr);
    char text[32];
    std::strftime(text, sizeof text, "%Y-%m-%dT%H:%M:%SZ", std::gmtime(&now));
    return text;
}

std::optional<Opened> JobCommand::open(Speaks speaks) const {
    const auto text = read_file(options_.job);
    if (!text) return tell({}, text.error()), std::nullopt;
    auto json = parse_json(*text);
    if (!json) return tell(*text, json.error()), std::nullopt;
    auto shop = read_shop_file(shop_file());
    if (!shop) return tell({}, shop.error(), shop_file()), std::nullopt;
    const auto memory = read_memory(shop->json);
    if (!memory) return refuse_shop(shop_file(), memory.error().front(), io_), std::nullopt;
    add_shop(*json, shop->json);
    const Language language =
        speaks == Speaks::english ? Language::english : read_preferences(shop->json).language;
    return Opened{*text, worked_out(unworked_session(std::move(*json), *memory, utc_now(), language)),
                  std::move(shop->json)};
}

bool JobCommand::is_made(const Opened& opened, const Session& session) const {
    for (const Problem& problem : session.problems)
        tell(opened.text, to_file_error(problem, opened.text, graduation_of(session)));
    if (session.problems.empty()) return true;
    io_.err << report(unread_in_files(opened.text));
    return false;
}

std::vector<UnreadField> JobCommand::unread_in_files(const std::string& text) const {
    return unread_fields(options_.job, text, shop_file());
}

int JobCommand::tell(const std::string& text, const FileError& error, const std::string& file) const {
    io_.err << report(file, text, error);
    return 1;
}

int JobCommand::refuse(const std::string& why) const {
    io_.err << options_.job << ": " << why << "\n";
    return 1;
}

bool JobCommand::save(const Opened& before, const Session& after) const {
    if (const auto saved = save_over(options_.job, before.text, text_with(before.text, after.document));
        !saved) {
        tell({}, saved.error());
        return false;
    }
    return after.memory == before.session.memory || save_learned(before.session.memory, after.memory);
}

// With what another program has written into the shop's file meanwhile, which may be at this very moment.
bool JobCommand::save_learned(const Memory& before, const Memory& now) const {
    constexpr int tries = 3;
    tl::expected<void, FileError> saved;
    for (int i = 0; i < tries; ++i) {
        const auto shop = read_shop_file(shop_file());
        const auto there = shop ? read_memory(shop->json) : Memory{};
        saved = !shop   ? tl::unexpected(shop.error())
                : there ? save_shop_file(shop_file(), *shop,
                                         with_memory(shop->json, with_others(now, before, *there)))
                        : tl::unexpected(FileError{{}, there.error().front().why, {}});
        if (saved) return true;
    }
    io_.err << options_.job << ": this is saved, but not what it taught the shop\n";
    tell({}, saved.error(), shop_file());
    return false;
}

}  // namespace kw
