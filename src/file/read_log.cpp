#include "file/read_log.h"

#include "file/read_broken_down.h"
#include "testcut/feel.h"

namespace kw {
namespace {

std::optional<LogKind> log_kind_named(std::string_view name) {
    if (name == "test") return LogKind::test;
    if (name == "lock") return LogKind::lock;
    if (name == "ran") return LogKind::ran;
    if (name == "lost") return LogKind::lost;
    if (name == "broken down") return LogKind::broken_down;
    return std::nullopt;
}

const char* name_of_kind(LogKind kind) {
    switch (kind) {
        case LogKind::test: return "test";
        case LogKind::lock: return "lock";
        case LogKind::ran: return "ran";
        case LogKind::lost: return "lost";
        case LogKind::broken_down: return "broken down";
    }
    return "";
}

std::vector<std::string_view> feel_words() {
    std::vector<std::string_view> words;
    for (const FeelMeaning& meaning : feel_table()) words.push_back(meaning.word);
    return words;
}

std::vector<NamedLength> read_named(Fields& entry, const std::string& name) {
    std::vector<NamedLength> out;
    if (!entry.is_object(name)) return out;
    Fields values = entry.object(name);
    for (const auto& item : values.json()->items())
        out.push_back({item.key(), values.signed_length(item.key(), {})});
    return out;
}

Scale read_scale(Fields scale, const Scale& usual) {
    if (scale.number("spread_mm", usual.spread_mm) <= 0.0)
        scale.blame("spread_mm", Message::say("file.spread"), Message::say("file.spread_usual"));
    if (scale.number("gain_spread", usual.gain_spread) < 0.0)
        scale.blame("gain_spread", Message::say("file.gain_spread"), Message::say("file.gain_usual"));
    return {scale.number("offset_mm", usual.offset_mm), scale.number("spread_mm", usual.spread_mm),
            scale.number("gain", usual.gain), scale.number("gain_spread", usual.gain_spread)};
}

Start read_start(Fields start) {
    Start out;
    Fields dial = start.object("dial");
    out.dial = {dial.signed_length("fence", {}), dial.signed_length("height", {}),
                dial.signed_length("kerf", {}), dial.signed_length("shift", {}),
                dial.signed_length("spacer", {})};
    Fields scales = start.object("scales");
    out.scales.fence = read_scale(scales.object("fence"), out.scales.fence);
    out.scales.height = read_scale(scales.object("height"), out.scales.height);
    out.scales.kerf = read_scale(scales.object("kerf"), out.scales.kerf);
    out.tool = start.one_of("with", tool_named, {"caliper", "rule"}, Tool::caliper);
    constexpr int most_in_any_board = 10'000;
    if (start.has("row_to")) out.row_to = start.count("row_to", 0, 1, most_in_any_board);
    if (start.has("sockets_up")) out.sockets_up = start.count("sockets_up", 0, 1, most_in_any_board);
    return out;
}

Json start_json(const Start& start, Unit unit) {
    const auto scale = [](const Scale& s) {
        return Json{{"offset_mm", s.offset_mm},
                    {"spread_mm", s.spread_mm},
                    {"gain", s.gain},
                    {"gain_spread", s.gain_spread}};
    };
    const Settings& dial = start.dial;
    Json out = {{"dial",
                 {{"fence", exact_text(dial.fence, unit)},
                  {"height", exact_text(dial.height, unit)},
                  {"kerf", exact_text(dial.kerf, unit)},
                  {"shift", exact_text(dial.shift, unit)},
                  {"spacer", exact_text(dial.spacer, unit)}}},
                {"scales",
                 {{"fence", scale(start.scales.fence)},
                  {"height", scale(start.scales.height)},
                  {"kerf", scale(start.scales.kerf)}}},
                {"with", name_of(start.tool)}};
    if (start.row_to > 0) out["row_to"] = start.row_to;
    if (start.sockets_up > 0) out["sockets_up"] = start.sockets_up;
    return out;
}

LogEntry read_entry(Fields entry) {
    LogEntry out;
    out.kind =
        entry.one_of("kind", log_kind_named, {"test", "lock", "ran", "lost", "broken down"}, LogKind::test);
    out.time = entry.text("time", {});
    out.setup = entry.text("setup", {});
    out.key = entry.text("key", {});
    out.machine = entry.text("machine", {});
    out.readings = read_named(entry, "readings");
    out.felt = entry.text("felt", {});
    if (!out.felt.empty() && !feel_of_word(out.felt))
        entry.blame("felt", Message::say("file.no_feel", out.felt),
                    Message::say("file.write", either_of(feel_words())));
    for (const std::string& word : entry.texts("seen")) {
        out.seen.push_back(word);
        if (!sight_of_word(word))
            entry.blame("seen", Message::say("file.no_sight", word), Message::say("file.sight_written"));
    }
    if (entry.has("with")) out.tool = entry.one_of("with", tool_named, {"caliper", "rule"}, Tool::caliper);
    if (entry.has("start")) out.start = read_start(entry.object("start"));
    out.moved_given = entry.has("moved");
    out.moved = read_named(entry, "moved");
    out.fresh_end = entry.truth("fresh_end", false);
    out.part = entry.text("part", {});
    out.reference = entry.text("reference", {});
    out.by = entry.text("by", {});
    out.together = entry.truth("together", false);
    out.late = entry.text("late", {});
    if (out.kind == LogKind::broken_down) out.broken_down = read_broken_down(entry);
    return out;
}

Json named_json(const std::vector<NamedLength>& values, Unit unit) {
    Json out = Json::object();
    for (const NamedLength& value : values) out[value.name] = exact_text(value.value, unit);
    return out;
}

}  // namespace

std::vector<LogEntry> read_log(Fields& job_fields) {
    std::vector<LogEntry> log;
    for (Fields& entry : job_fields.array("log")) log.push_back(read_entry(entry));
    return log;
}

Json log_entry_json(const LogEntry& entry, Unit unit) {
    Json out = {
        {"kind", name_of_kind(entry.kind)}, {"time", entry.time}, {"setup", entry.setup}, {"key", entry.key}};
    if (!entry.machine.empty()) out["machine"] = entry.machine;
    if (!entry.readings.empty()) out["readings"] = named_json(entry.readings, unit);
    if (!entry.felt.empty()) out["felt"] = entry.felt;
    if (!entry.seen.empty()) out["seen"] = entry.seen;
    if (entry.tool) out["with"] = name_of(*entry.tool);
    if (entry.start) out["start"] = start_json(*entry.start, unit);
    if (entry.moved_given) out["moved"] = named_json(entry.moved, unit);
    if (entry.fresh_end) out["fresh_end"] = true;
    if (!entry.part.empty()) out["part"] = entry.part;
    if (!entry.reference.empty()) out["reference"] = entry.reference;
    if (!entry.by.empty()) out["by"] = entry.by;
    if (entry.together) out["together"] = true;
    if (!entry.late.empty()) out["late"] = entry.late;
    if (entry.broken_down) add_broken_down(*entry.broken_down, unit, out);
    return out;
}

}  // namespace kw
