#include "checker/amount.h"

#include <numeric>
#include <vector>

namespace checker {
namespace {

bool of_a_rule(const Amount& amount) { return amount.unit == Unit::inch && (64 % amount.per) == 0; }

// "10 1/16", "1/4", "3"; with the given mark between whole and fraction.
std::string mixed(std::int64_t count, std::int64_t per, const std::string& mark) {
    const std::int64_t common = std::gcd(count, per);
    const std::int64_t whole = count / per;
    const std::int64_t above = (count % per) / common;
    if (above == 0) return std::to_string(whole);
    const std::string fraction = std::to_string(above) + "/" + std::to_string(per / common);
    return whole == 0 ? fraction : std::to_string(whole) + mark + fraction;
}

// All decimals of count / per, at most six, which is what a 64th has.
std::string decimal(std::int64_t count, std::int64_t per, char mark) {
    std::string digits = std::to_string((count % per) * 1000000 / per + 1000000).substr(1);
    while (!digits.empty() && digits.back() == '0') digits.pop_back();
    const std::string whole = std::to_string(count / per);
    return digits.empty() ? whole : whole + mark + digits;
}

std::string with_unit(const std::string& number, Unit unit, Dice& dice) {
    static const std::vector<std::string> inches{" in", "in", "\"", "\"", " in"};
    static const std::vector<std::string> millimetres{" mm", "mm", " mm"};
    return number + dice.one_of(unit == Unit::inch ? inches : millimetres);
}

std::string plain_number(const Amount& amount, Dice& dice) {
    const bool rule = of_a_rule(amount) && dice.chance(80);
    if (rule) return mixed(amount.count, amount.per, dice.chance(25) ? "-" : " ");
    return decimal(amount.count, amount.per, dice.chance(25) ? ',' : '.');
}

// 1' 2 1/2", 2', 1'3"
std::string feet(const Amount& amount, Dice& dice) {
    const std::int64_t foot = amount.per * 12;
    const std::string feet_part = std::to_string(amount.count / foot) + "'";
    const std::int64_t rest = amount.count % foot;
    if (rest == 0) return feet_part;
    return feet_part + (dice.chance(70) ? " " : "") + mixed(rest, amount.per, " ") + "\"";
}

// Two terms, both with a unit or both without.
std::string sum(const Amount& amount, Unit bare, Dice& dice) {
    Amount part = amount;
    part.count = dice.between(1, 3 * amount.per);
    const bool minus = amount.count <= part.count || dice.chance(60);
    Amount rest = amount;
    rest.count += minus ? part.count : -part.count;
    const bool bare_terms = amount.unit == bare && dice.chance(60);
    const auto term = [&](const Amount& one) {
        const std::string number = plain_number(one, dice);
        return bare_terms ? number : with_unit(number, one.unit, dice);
    };
    const std::string first = term(rest);
    return first + (minus ? " - " : " + ") + term(part);
}

std::string in_centimetres(const Amount& amount, Dice& dice) {
    return decimal(amount.count, amount.per * 10, dice.chance(30) ? ',' : '.') + " cm";
}

}  // namespace

double Amount::mm() const {
    const double value = static_cast<double>(count) / static_cast<double>(per);
    return unit == Unit::inch ? value * inch_mm : value;
}

Json written(const Amount& amount, Unit bare, Dice& dice) {
    if (dice.chance(10)) return sum(amount, bare, dice);
    if (of_a_rule(amount) && amount.count >= 12 * amount.per && dice.chance(10)) return feet(amount, dice);
    if (amount.unit == Unit::millimetre && dice.chance(5)) return in_centimetres(amount, dice);
    if (amount.unit != bare || dice.chance(30))
        return with_unit(plain_number(amount, dice), amount.unit, dice);
    if (dice.chance(20)) {
        if (amount.count % amount.per == 0) return amount.count / amount.per;
        return static_cast<double>(amount.count) / static_cast<double>(amount.per);
    }
    return plain_number(amount, dice);
}

}  // namespace checker
