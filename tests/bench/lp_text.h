#pragma once
// A mixed-integer program in the LP format, which most solvers of such programs read. Columns keep their names.

#include <string>

#include "order/milp.h"

namespace bench {

inline std::string lp_term(const ord::Milp& milp, std::size_t column, std::int64_t factor) {
    return (factor < 0 ? " - " : " + ") + std::to_string(factor < 0 ? -factor : factor) + " " +
           milp.columns[column].name;
}

inline std::string lp_text(const ord::Milp& milp) {
    std::string text = "Minimize\n seconds:";
    for (std::size_t c = 0; c < milp.columns.size(); ++c)
        if (milp.columns[c].seconds != 0) text += lp_term(milp, c, milp.columns[c].seconds) + "\n";
    text += "\nSubject To\n";
    for (std::size_t r = 0; r < milp.rows.size(); ++r) {
        const ord::Milp::Row& row = milp.rows[r];
        text += " r" + std::to_string(r) + ":";
        for (std::size_t t = 0; t < row.terms.size(); ++t)  // lines must stay short
            text += lp_term(milp, row.terms[t].first, row.terms[t].second) + (t % 8 == 7 ? "\n" : "");
        text += row.sense == ord::Milp::Sense::at_most    ? " <= "
                : row.sense == ord::Milp::Sense::at_least ? " >= "
                                                          : " = ";
        text += std::to_string(row.bound) + "\n";
    }
    text += "Binaries\n";
    for (const ord::Milp::Column& column : milp.columns) text += " " + column.name + "\n";
    return text + "End\n";
}

// Which columns are to be decided first, as CBC reads it: low numbers first.
inline std::string priority_text(const ord::Milp& milp) {
    std::string text = "name,priority\n";
    for (const ord::Milp::Column& column : milp.columns)
        text += column.name + "," + std::to_string(column.rank + 1) + "\n";
    return text;
}

}  // namespace bench
