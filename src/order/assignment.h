#pragma once
// The least way to give each operation that is left one that it follows at once, whether or not that makes one path: the assignment
// relaxation of what is left of a path.

#include "order/path.h"

namespace kw::order {

// Found for one partial order from the one that it goes on from, by a shortest augmenting path or two (Jonker and Volgenant 1987).
class Assignment {
public:
    explicit Assignment(const Path& path);

    // Of a partial order: by column, what is followed, and the dual price. Columns of what is done mean nothing.
    struct Plan {
        std::uint8_t* row_of;
        std::int64_t* price;
    };

    // What it takes; `never` where there is none.
    std::int64_t start(const Plan& plan);
    // `last` was done last, and is now followed by `operation`. `done` has both in it.
    std::int64_t go_on(const Path::Set& done, std::size_t operation, const Plan& before, const Plan& plan);

private:
    std::int64_t repair(const Plan& plan);
    bool augment(const Plan& plan, std::size_t row);
    const std::int64_t* row_at(std::size_t row) const {
        return row == last_ ? last_row_.data() : path_.seconds.data() + row * path_.side();
    }
    void look_at(const Path::Set& done, std::size_t last);

    const Path& path_;
    std::size_t last_ = 0;
    std::vector<std::int64_t> last_row_;  // what can be done next, and no more
    std::vector<std::size_t> columns_;    // of what is left, and the end
    std::vector<std::int64_t> distance_;  // by column, while a way is looked for
    std::vector<std::size_t> came_from_;
    std::vector<std::size_t> column_of_;  // by row
    std::vector<std::size_t> free_rows_;
};

}  // namespace kw::order
