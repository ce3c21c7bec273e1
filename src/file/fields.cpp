#include "file/fields.h"

#include <cmath>

namespace kw {
namespace {

Message kind_of(const Json& value) {
    if (value.is_null()) return Message::say("file.kind.nothing");
    if (value.is_boolean()) return Message::say("file.kind.truth");
    if (value.is_number()) return Message::say("file.kind.number");
    if (value.is_string()) return Message::say("file.kind.text");
    return value.is_array() ? Message::say("file.kind.list") : Message::say("file.kind.object");
}

Message field(const std::string& name) { return Message::name("file.field.", name); }

// Only with a unit of its own it is as long whatever the unit is without one.
bool has_unit(const std::string& text) {
    const auto in_inches = read_length(text, Unit::inch), in_mm = read_length(text, Unit::millimetre);
    return in_inches && in_mm && *in_inches == *in_mm;
}

bool is_sum(const std::string& text) {
    return text.find('+') != std::string::npos || text.find(" - ") != std::string::npos;
}

std::string unit_behind(Unit unit) {
    return unit == Unit::inch ? " in" : unit == Unit::centimetre ? " cm" : " mm";
}

constexpr Length farthest = Length::millimetres(100'000);  // no drawer is longer than a hundred metres

}  // namespace

std::string pointer_step(const std::string& name) {
    std::string step = "/";
    for (const char c : name) step += c == '~' ? "~0" : c == '/' ? "~1" : std::string(1, c);
    return step;
}

Fields::Fields(const Json* json, std::string at, Unit unit, std::vector<Problem>& problems, Asked* asked)
    : json_(json), at_(std::move(at)), unit_(unit), problems_(&problems), asked_(asked) {}

const Json* Fields::find(const std::string& name) const {
    if (!json_ || !json_->is_object()) return nullptr;
    if (asked_) (*asked_)[at_].insert(name);
    const auto found = json_->find(name);
    return found == json_->end() || found->is_null() ? nullptr : &*found;
}

bool Fields::has(const std::string& name) const { return find(name) != nullptr; }

bool Fields::is_object(const std::string& name) const {
    const Json* value = find(name);
    return value && value->is_object();
}

void Fields::blame(const std::string& name, Message why, Message remedy) {
    problems_->push_back({at_ + (name.empty() ? "" : pointer_step(name)), std::move(why), std::move(remedy)});
}

std::string Fields::text(const std::string& name, const std::string& fallback) {
    const Json* value = find(name);
    if (!value) return fallback;
    if (value->is_string()) return value->get<std::string>();
    blame(name, Message::say("file.text_wanted", field(name), kind_of(*value)),
          Message::say("file.put_in_quotes"));
    return fallback;
}

std::string Fields::required_text(const std::string& name) {
    if (!find(name)) {
        blame(name, Message::say("file.missing", field(name)), Message::say("file.write_one"));
        return {};
    }
    const std::string words = text(name, {});
    if (words.empty() && find(name)->is_string())
        blame(name, Message::say("file.empty", field(name)), Message::say("file.write_one"));
    return words;
}

int Fields::count(const std::string& name, int fallback, int least, int most) {
    const Json* value = find(name);
    if (!value) return fallback;
    if (value->is_number_integer()) {
        const auto number = value->get<std::int64_t>();
        if (number >= least && number <= most) return static_cast<int>(number);
    }
    blame(name, Message::say("file.whole_number", field(name), least),
          Message::say("file.from_to", least, most));
    return fallback;
}

double Fields::number(const std::string& name, double fallback) {
    const Json* value = find(name);
    if (!value) return fallback;
    if (value->is_number() && std::isfinite(value->get<double>())) return value->get<double>();
    blame(name, Message::say("file.number_wanted", field(name), kind_of(*value)),
          Message::say("file.write_a_number"));
    return fallback;
}

bool Fields::truth(const std::string& name, bool fallback) {
    const Json* value = find(name);
    if (!value) return fallback;
    if (value->is_boolean()) return value->get<bool>();
    blame(name, Message::say("file.true_or_false", field(name)), Message::say("file.write_true_or_false"));
    return fallback;
}

std::optional<Length> Fields::read(const Json& value, const std::string& name, bool allow_negative) {
    if (!value.is_string() && !value.is_number()) {
        blame(name, Message::say("file.length_wanted", field(name), kind_of(value)),
              Message::say("file.as_on_a_cut_list_in_quotes"));
        return std::nullopt;
    }
    // A number is read from its own digits, so that 0.1 is a tenth and not the double next to it.
    const std::string written = value.is_string() ? value.get<std::string>() : value.dump();
    const auto length = read_length(written, unit_);
    if (!length) {
        blame(name,
              Message::say("file.at_character", length.error().message,
                           static_cast<int>(length.error().column + 1)),
              Message::say("file.as_on_a_cut_list"));
        return std::nullopt;
    }
    if (abs(*length) > farthest || (*length < Length{} && !allow_negative)) {
        blame(name,
              *length < Length{} ? Message::say("file.below_nothing", field(name))
                                 : Message::say("file.longer_than_a_drawer", field(name)),
              Message::say("file.measure_again"));
        return std::nullopt;
    }
    return length.value();
}

std::optional<Length> Fields::optional_length(const std::string& name) {
    const Json* value = find(name);
    return value ? read(*value, name, false) : std::nullopt;
}

Length Fields::length(const std::string& name, Length fallback) {
    return optional_length(name).value_or(fallback);
}

Length Fields::signed_length(const std::string& name, Length fallback) {
    const Json* value = find(name);
    return value ? read(*value, name, true).value_or(fallback) : fallback;
}

Length Fields::required_length(const std::string& name) {
    const Json* value = find(name);
    if (!value) {
        blame(name, Message::say("file.missing", field(name)), Message::say("file.measure_and_write"));
        return {};
    }
    const auto size = read(*value, name, false);
    if (size && *size == Length{})
        blame(name, Message::say("file.zero", field(name)), Message::say("file.measure_and_write"));
    return size.value_or(Length{});
}

std::vector<std::string> Fields::texts(const std::string& name) {
    const Json* value = find(name);
    if (!value) return {};
    std::vector<std::string> out;
    const bool list = value->is_array();
    for (const Json& item : *value)
        if (list && item.is_string()) out.push_back(item.get<std::string>());
    if (!list || out.size() != value->size())
        blame(name, Message::say("file.list_of_texts", field(name)), Message::say("file.write_texts"));
    return out;
}

std::vector<Length> Fields::lengths(const std::string& name) {
    const Json* value = find(name);
    if (!value) return {};
    if (!value->is_array()) {
        blame(name, Message::say("file.list", field(name)), Message::say("file.write_lengths"));
        return {};
    }
    std::vector<Length> out;
    for (const Json& item : *value)
        if (const auto length = read(item, name, false)) out.push_back(*length);
    return out;
}

std::vector<std::optional<Length>> Fields::open_lengths(const std::string& name) {
    const Json* value = find(name);
    if (!value) return {};
    if (!value->is_array()) {
        blame(name, Message::say("file.list", field(name)), Message::say("file.write_lengths"));
        return {};
    }
    std::vector<std::optional<Length>> out;
    for (const Json& item : *value)
        out.push_back(item.is_null() || item == "" ? std::nullopt : read(item, name, false));
    return out;
}

std::vector<int> Fields::counts(const std::string& name, int least, int most) {
    const Json* value = find(name);
    if (!value) return {};
    std::vector<int> out;
    for (const Json& item : *value)
        if (value->is_array() && item.is_number_integer() && item >= least && item <= most)
            out.push_back(item.get<int>());
    if (!value->is_array() || out.size() != value->size())
        blame(name, Message::say("file.whole_numbers", field(name)),
              Message::say("file.from_to", least, most));
    return out;
}

std::map<Length, std::string> Fields::as_written(const std::string& name) {
    std::map<Length, std::string> out;
    const Json* value = find(name);
    if (!value || !value->is_array()) return out;
    for (const Json& item : *value) {
        if (!item.is_string() && !item.is_number()) continue;
        const std::string text = item.is_string() ? item.get<std::string>() : item.dump();
        const auto length = read_length(text, unit_);
        if (length && !is_sum(text)) out.emplace(*length, has_unit(text) ? text : text + unit_behind(unit_));
    }
    return out;
}

Fields Fields::object(const std::string& name, bool required) {
    const Json* value = find(name);
    if (value && !value->is_object()) {
        blame(name, Message::say("file.object_wanted", field(name), kind_of(*value)),
              Message::say("file.write_object"));
        value = nullptr;
    } else if (!value && required) {
        blame(name, Message::say("file.missing", field(name)), Message::say("file.write_object"));
    }
    return Fields(value, at_ + pointer_step(name), unit_, *problems_, asked_);
}

std::vector<Fields> Fields::array(const std::string& name, bool required) {
    const Json* value = find(name);
    std::vector<Fields> out;
    if (!value || !value->is_array()) {
        if (value || required)
            blame(name,
                  value ? Message::say("file.list", field(name)) : Message::say("file.missing", field(name)),
                  Message::say("file.write_list"));
        return out;
    }
    const std::string at = at_ + pointer_step(name);
    for (std::size_t i = 0; i < value->size(); ++i) {
        const Json& item = (*value)[i];
        const std::string item_at = at + "/" + std::to_string(i);
        if (!item.is_object())
            problems_->push_back({item_at, Message::say("file.this_object_wanted", kind_of(item)),
                                  Message::say("file.write_object")});
        out.emplace_back(item.is_object() ? &item : nullptr, item_at, unit_, *problems_, asked_);
    }
    return out;
}

}  // namespace kw
