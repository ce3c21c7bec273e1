#include "window/length_entry.h"

#include <algorithm>
#include <cmath>
#include <vector>

#include "draw/fraction_text.h"
#include "session/words.h"

namespace kw::window {
namespace {

constexpr std::size_t most_digits = 6;

bool is_digit(char c) { return c >= '0' && c <= '9'; }

LengthEntry emptied(const LengthEntry& entry) {
    LengthEntry next;
    next.unit = entry.unit;
    next.terms = entry.terms;
    next.fresh = false;
    return next;
}

LengthEntry started(const LengthEntry& entry) { return entry.fresh ? emptied(entry) : entry; }

std::string& digits_of(LengthEntry& entry) {
    switch (entry.slot) {
        case Slot::whole: return entry.whole;
        case Slot::decimals: return entry.decimals;
        case Slot::numerator: return entry.numerator;
        case Slot::denominator: break;
    }
    return entry.denominator;
}

bool has_fraction(const LengthEntry& e) { return !e.numerator.empty() || !e.denominator.empty(); }

constexpr std::size_t most_in_terms = 48;

// The last term of the sum is what is being put in again.
LengthEntry last_term_again(const LengthEntry& entry) {
    const std::string all = entry.terms.substr(0, entry.terms.size() - 3);  // without the sign at its end
    const std::size_t plus = all.rfind(" + "), minus = all.rfind(" - ");
    const std::size_t at = plus == std::string::npos    ? minus
                           : minus == std::string::npos ? plus
                                                        : std::max(plus, minus);
    LengthEntry next = entry_of(at == std::string::npos ? all : all.substr(at + 3), entry.unit);
    next.terms = at == std::string::npos ? std::string() : all.substr(0, at + 3);
    next.fresh = false;
    if (!next.numerator.empty()) next.slot = Slot::denominator;
    else if (!next.decimals.empty()) next.slot = Slot::decimals;
    return next;
}

Unit unit_for(const LengthEntry& entry) {
    return entry.unit == "mm" ? Unit::millimetre : entry.unit == "cm" ? Unit::centimetre : Unit::inch;
}

// "in", "mm", "cm", and the marks for inches; empty for anything else.
std::string_view unit_at_end(std::string_view text) {
    for (const std::string_view unit : {"mm", "cm", "in"}) {
        if (text.size() >= unit.size() && text.substr(text.size() - unit.size()) == unit) return unit;
    }
    return !text.empty() && text.back() == '"' ? std::string_view("in") : std::string_view();
}

bool take_number(LengthEntry& entry, std::string_view number) {
    for (const char c : number) {
        if (is_digit(c)) digits_of(entry) += c;
        else if ((c == '.' || c == ',') && entry.slot == Slot::whole) entry.slot = Slot::decimals;
        else if (c == '-' && entry.whole.empty() && !entry.negative && entry.slot == Slot::whole)
            entry.negative = true;
        else if (c != ' ') return false;
    }
    return true;
}

bool take_run(LengthEntry& entry, const draw::TextRun& run) {
    switch (run.kind) {
        case draw::RunKind::plain: return !has_fraction(entry) && take_number(entry, run.text);
        case draw::RunKind::numerator:
            if (has_fraction(entry)) return false;
            entry.numerator = run.text;
            entry.slot = Slot::numerator;
            return true;
        case draw::RunKind::slash: return true;
        case draw::RunKind::denominator: break;
    }
    entry.denominator = run.text;
    return true;
}

}  // namespace

LengthEntry entry_of(std::string_view text, std::string_view unit) {
    LengthEntry entry;
    const std::string_view own_unit = unit_at_end(text);
    entry.unit = own_unit.empty() ? unit : own_unit;
    std::string number(text.substr(
        0, own_unit.empty() ? text.size() : text.size() - (text.back() == '"' ? 1 : own_unit.size())));
    while (!number.empty() && number.back() == ' ') number.pop_back();
    const LengthEntry nothing = entry;
    for (const draw::TextRun& run : draw::text_runs(number)) {
        if (!take_run(entry, run)) return nothing;
    }
    entry.slot = Slot::whole;
    return entry;
}

LengthEntry digit(const LengthEntry& entry, char value) {
    LengthEntry next = started(entry);
    if (std::string& digits = digits_of(next); digits.size() < most_digits) digits += value;
    return next;
}

LengthEntry point(const LengthEntry& entry) {
    LengthEntry next = started(entry);
    next.slot = Slot::decimals;
    next.numerator.clear();
    next.denominator.clear();
    if (next.whole.empty()) next.whole = "0";
    return next;
}

LengthEntry next_slot(const LengthEntry& entry) {
    LengthEntry next = started(entry);
    next.decimals.clear();
    switch (next.slot) {
        case Slot::whole:
        case Slot::decimals: next.slot = Slot::numerator; break;
        case Slot::numerator: next.slot = Slot::denominator; break;
        case Slot::denominator: next.slot = Slot::whole; break;
    }
    return next;
}

LengthEntry denominator(const LengthEntry& entry, int value) {
    LengthEntry next = started(entry);
    next.decimals.clear();
    next.denominator = std::to_string(value);
    next.slot = Slot::numerator;
    return next;
}

LengthEntry erased(const LengthEntry& entry) {
    if (entry.fresh) return emptied(entry);
    LengthEntry next = entry;
    if (std::string& digits = digits_of(next); !digits.empty()) {
        digits.pop_back();
        return next;
    }
    switch (next.slot) {
        case Slot::denominator: next.slot = Slot::numerator; break;
        case Slot::numerator:
            next.denominator.clear();
            next.slot = Slot::whole;
            break;
        case Slot::decimals: next.slot = Slot::whole; break;
        case Slot::whole:
            if (!next.terms.empty()) return last_term_again(next);
            next.negative = false;
            break;
    }
    return next;
}

LengthEntry next_term(const LengthEntry& entry, char sign) {
    LengthEntry next = entry;
    // Over what stands there a minus begins anew, as a digit does: a reading that is tight is negative.
    if (entry.fresh && sign == '-') {
        next = emptied(entry);
        next.terms.clear();
        next.negative = true;
        next.fresh = false;
        return next;
    }
    if (is_complete(entry)) {
        const std::string before = text_of(entry);
        if (before.size() > most_in_terms) return entry;
        next = emptied(entry);
        next.terms = before + " " + sign + " ";
        return next;
    }
    const bool is_empty = entry.whole.empty() && !has_fraction(entry);
    if (!is_empty) return entry;
    if (!entry.terms.empty()) next.terms[next.terms.size() - 2] = sign;
    else if (sign == '-') next.negative = !next.negative;
    next.fresh = false;
    return next;
}

LengthEntry change_sign(const LengthEntry& entry) {
    LengthEntry next = entry;
    // Within a sum the sign is the one before the term.
    if (!next.terms.empty()) {
        char& sign = next.terms[next.terms.size() - 2];
        sign = sign == '+' ? '-' : '+';
        return next;
    }
    next.negative = !next.negative;
    return next;
}

LengthEntry with_numerator(const LengthEntry& entry) {
    if (entry.denominator.empty() || !entry.numerator.empty()) return entry;
    std::vector<LengthEntry> all;
    for (std::size_t count = 1; count <= 2 && count <= entry.whole.size(); ++count) {
        LengthEntry one = entry;
        one.numerator = entry.whole.substr(entry.whole.size() - count);
        one.whole.resize(entry.whole.size() - count);
        const int numerator = std::stoi(one.numerator);
        const bool is_line = numerator % 2 == 1 && numerator < std::stoi(entry.denominator);
        if (is_line && one.numerator.front() != '0') all.push_back(std::move(one));
    }
    return all.size() == 1 ? all.front() : entry;
}

LengthEntry with_unit(const LengthEntry& entry, std::string_view unit) {
    LengthEntry next = entry;
    next.unit = unit;
    if (!entry.fresh || entry.unit == unit || text_of(entry).empty()) return next;
    const auto length = read_length(text_of(entry), unit_for(entry));
    if (!length) return next;
    std::string text = show(abs(*length), Graduation::in_64);
    const auto again = read_length(text, Unit::inch);
    if (unit_for(next) != Unit::inch)
        text = exact_text(Length::micrometres(std::llround(abs(*length).mm() * 100) * 10), unit_for(next));
    else if (!again || *again != abs(*length)) text = without_mark(show(abs(*length), Graduation::in_001));
    return entry_of((*length < Length{} ? "-" : "") + text, unit);
}

LengthEntry typed(const LengthEntry& entry, char key) {
    if (is_digit(key)) return digit(entry, key);
    if (key == '.' || key == ',') return point(entry);
    if (key == '-' || key == '+') {
        LengthEntry next = next_term(entry, key);
        const bool is_whole = entry.slot == Slot::whole && !entry.whole.empty() && !has_fraction(entry) &&
                              entry.decimals.empty() && !entry.fresh;
        next.joins = key == '-' && is_whole && next.terms.size() > entry.terms.size();
        return next;
    }
    if (key == ' ' && entry.joins && entry.whole.empty()) {
        LengthEntry next = entry;
        next.joins = false;
        return next;
    }
    if (key == ' ' && (entry.slot == Slot::whole || entry.fresh)) return next_slot(entry);
    if (key != '/') return entry;
    LengthEntry next = started(entry);
    // "3/" right away: what was put in as the whole is the numerator.
    if (next.slot == Slot::whole) {
        const std::string numerator = next.whole;
        if (next.joins && !numerator.empty()) next = last_term_again(next);
        else next.whole.clear();
        next.numerator = numerator;
    }
    if (next.slot == Slot::decimals) return next;
    next.denominator.clear();
    next.slot = Slot::denominator;
    return next;
}

std::string text_of(const LengthEntry& put_in) {
    const LengthEntry entry = with_numerator(put_in);
    std::string number = entry.whole;
    if (!entry.decimals.empty()) number += "." + entry.decimals;
    if (!entry.numerator.empty() && !entry.denominator.empty()) {
        number += (number.empty() ? "" : " ") + entry.numerator + "/" + entry.denominator;
    }
    if (number.empty()) return "";
    return entry.terms + (entry.negative ? "-" : "") + number + (entry.unit.empty() ? "" : " " + entry.unit);
}

bool is_complete(const LengthEntry& put_in) {
    const LengthEntry entry = with_numerator(put_in);
    const bool number = !entry.whole.empty() || !entry.numerator.empty();
    return number && entry.numerator.empty() == entry.denominator.empty();
}

Graduation step_of(const LengthEntry& entry, Graduation rule) {
    const bool is_metric = unit_for(entry) != Unit::inch,
               is_same = (unit_of(rule) != Unit::inch) == is_metric;
    if (is_metric) {
        if (entry.decimals.size() > 1) return Graduation::mm_0_01;
        return is_same ? rule : Graduation::mm_0_1;
    }
    if (!entry.decimals.empty()) return Graduation::in_001;
    return is_same && rule != Graduation::in_001 ? rule : Graduation::in_64;
}

LengthEntry nudged(const LengthEntry& entry, int steps, Graduation rule) {
    const Unit unit = unit_for(entry);
    Length length;
    if (!text_of(entry).empty()) {
        const auto read = read_length(text_of(entry), unit);
        if (!read || !is_complete(entry)) return entry;
        length = *read;
    } else if (!entry.terms.empty()) {
        return entry;
    }
    const Graduation step = step_of(entry, rule);
    length += steps * graduation_step(step);
    // With all its decimals, so that the next step is as fine; a value between two lines stays exact.
    std::string text = (length < Length{} ? "-" : "") + show(abs(length), step);
    const auto again = read_length(text, unit_of(step));
    if (!again || *again != length || unit == Unit::centimetre) text = exact_text(length, unit);
    LengthEntry next = entry_of(text, entry.unit);
    next.fresh = false;
    if (!next.numerator.empty()) next.slot = Slot::denominator;
    else if (!next.decimals.empty()) next.slot = Slot::decimals;
    return next;
}

std::string worked_text(const LengthEntry& entry) {
    const std::string text = text_of(entry);
    if (entry.terms.empty()) return text;
    const auto read = read_length(text, unit_for(entry));
    return read ? exact_text(*read, unit_for(entry)) : text;
}

}  // namespace kw::window
