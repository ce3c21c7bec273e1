#include "file/read_log.h"

#include "testcut/feel.h"

namespace kw {
namespace {

std::optional<LogKind> log_kind_named(std::string_view name) {
    if (name == "test") return LogKind::test;
    if (name == "lock") return LogKind::lock;
    if (name == "ran") return LogKind::ran;
    return std::nullopt;
}

const char* name_of_kind(LogKind kind) {
    switch (kind) {
        case LogKind::test: return "test";
        case LogKind::lock: return "lock";
        case LogKind::ran: return "ran";
    }
    return "";
}

std::vector<NamedLength> read_named(Fields entry, const Json* json, const std::string& name) {
    std::vector<NamedLength> out;
    if (!json || !json->contains(name) || !(*json)[name].is_object()) return out;
    Fields values = entry.object(name);
    for (const auto& item : (*json)[name].items())
        out.push_back({item.key(), values.signed_length(item.key(), {})});
    return out;
}

LogEntry read_entry(Fields entry, const Json* json) {
    LogEntry out;
    out.kind = entry.one_of("kind", log_kind_named, "`test`, `lock` or `ran`", LogKind::test);
    out.time = entry.text("time", {});
    out.setup = entry.text("setup", {});
    out.key = entry.text("key", {});
    out.readings = read_named(entry, json, "readings");
    out.felt = entry.text("felt", {});
    if (!out.felt.empty() && !feel_of_word(out.felt))
        entry.blame("felt", Message::of("there is no feel `", out.felt, "`"),
                    Message::of("write `will not enter`, `mallet`, `hand tight`, `slides` or `rattles`"));
    out.moved_given = entry.has("moved");
    out.moved = read_named(entry, json, "moved");
    out.fresh_end = entry.truth("fresh_end", false);
    out.part = entry.text("part", {});
    out.reference = entry.text("reference", {});
    out.by = entry.text("by", {});
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
    for (Fields& entry : job_fields.array("log")) log.push_back(read_entry(entry, entry.json()));
    return log;
}

Json log_entry_json(const LogEntry& entry, Unit unit) {
    Json out = {
        {"kind", name_of_kind(entry.kind)}, {"time", entry.time}, {"setup", entry.setup}, {"key", entry.key}};
    if (!entry.readings.empty()) out["readings"] = named_json(entry.readings, unit);
    if (!entry.felt.empty()) out["felt"] = entry.felt;
    if (entry.moved_given) out["moved"] = named_json(entry.moved, unit);
    if (entry.fresh_end) out["fresh_end"] = true;
    if (!entry.part.empty()) out["part"] = entry.part;
    if (!entry.reference.empty()) out["reference"] = entry.reference;
    if (!entry.by.empty()) out["by"] = entry.by;
    return out;
}

}  // namespace kw
