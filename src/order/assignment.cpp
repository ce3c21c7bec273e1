#include "order/assignment.h"

#include <algorithm>

namespace kw::order {

namespace {

constexpr std::uint8_t none = 0xFF;                              // as a row
constexpr std::size_t unmatched = static_cast<std::size_t>(-1);  // as a column

}  // namespace

Assignment::Assignment(const Path& path)
    : path_(path),
      last_row_(path.side()),
      distance_(path.side()),
      came_from_(path.side()),
      column_of_(path.side()) {}

void Assignment::look_at(const Path::Set& done, std::size_t last) {
    last_ = last;
    columns_.clear();
    for (std::size_t i = 0; i < path_.count; ++i) {
        if (has(done, i)) continue;
        columns_.push_back(i);
        last_row_[i] = path_.is_ready(i, done) ? path_.from_to(last, i) : Path::never;
    }
    last_row_[path_.count] = columns_.empty() ? 0 : Path::never;
    columns_.push_back(path_.count);
}

std::int64_t Assignment::start(const Plan& plan) {
    look_at(Path::Set{}, path_.count);
    std::fill(plan.row_of, plan.row_of + path_.side(), none);
    std::fill(plan.price, plan.price + path_.side(), 0);
    return repair(plan);
}

std::int64_t Assignment::go_on(const Path::Set& done, std::size_t operation, const Plan& before,
                               const Plan& plan) {
    look_at(done, operation);
    for (const std::size_t column : columns_) {
        const std::size_t row = before.row_of[column];
        plan.price[column] = before.price[column];
        // What was followed by something else than was planned has been left, and that column is free.
        const bool is_left = row == operation || (row < path_.count && !has(done, row));
        plan.row_of[column] =
            is_left && row_at(row)[column] < Path::never ? static_cast<std::uint8_t>(row) : none;
    }
    return repair(plan);
}

std::int64_t Assignment::repair(const Plan& plan) {
    std::fill(column_of_.begin(), column_of_.end(), unmatched);
    for (const std::size_t column : columns_)
        if (plan.row_of[column] != none) column_of_[plan.row_of[column]] = column;
    free_rows_.clear();
    if (column_of_[last_] == unmatched) free_rows_.push_back(last_);
    for (const std::size_t row : columns_)
        if (row < path_.count && column_of_[row] == unmatched) free_rows_.push_back(row);
    for (const std::size_t row : free_rows_)
        if (!augment(plan, row)) return Path::never;
    std::int64_t sum = 0;
    for (const std::size_t column : columns_) sum += row_at(plan.row_of[column])[column];
    return sum;
}

// The shortest way from a free row to a free column, over columns that are taken.
bool Assignment::augment(const Plan& plan, std::size_t row) {
    const std::int64_t* seconds = row_at(row);
    for (const std::size_t column : columns_) {
        distance_[column] =
            seconds[column] >= Path::never ? Path::never : seconds[column] - plan.price[column];
        came_from_[column] = row;
    }
    std::size_t looked_at = 0;
    for (;;) {
        std::size_t nearest = looked_at;
        for (std::size_t k = looked_at + 1; k < columns_.size(); ++k)
            if (distance_[columns_[k]] < distance_[columns_[nearest]]) nearest = k;
        const std::size_t column = columns_[nearest];
        const std::int64_t least = distance_[column];
        if (least >= Path::never) return false;
        if (plan.row_of[column] == none) {
            for (std::size_t k = 0; k < looked_at; ++k)
                plan.price[columns_[k]] += distance_[columns_[k]] - least;
            std::size_t to = column;
            for (std::size_t from = unmatched; from != row;) {
                from = came_from_[to];
                plan.row_of[to] = static_cast<std::uint8_t>(from);
                std::swap(to, column_of_[from]);
            }
            return true;
        }
        std::swap(columns_[looked_at++], columns_[nearest]);
        const std::size_t via = plan.row_of[column];
        const std::int64_t* on = row_at(via);
        const std::int64_t ahead = least - (on[column] - plan.price[column]);
        for (std::size_t k = looked_at; k < columns_.size(); ++k) {
            const std::size_t next = columns_[k];
            if (on[next] >= Path::never) continue;
            const std::int64_t distance = ahead + on[next] - plan.price[next];
            if (distance >= distance_[next]) continue;
            distance_[next] = distance;
            came_from_[next] = via;
        }
    }
}

}  // namespace kw::order
