#pragma once
// What may come next. Private to this folder.

#include "order/problem.h"

namespace kw::order {

class Graph {
public:
    // What is done, and which block each machine is in the middle of.
    struct Progress {
        std::vector<std::uint64_t> done;   // a bit per operation
        std::vector<int> waiting;          // per operation: how many must still come before it
        std::vector<int> open_block;       // per machine, or `any`
        std::vector<int> left_in_block;    // per block
        std::int64_t work_seconds = 0;
    };

    explicit Graph(const Problem& problem);

    Progress start() const;
    Progress after(const Progress& progress, int operation) const;
    std::vector<int> available(const Progress& progress) const;
    std::int64_t work_done(const Progress& progress, int and_operation) const;
    static bool is_done(const Progress& progress, int operation);

private:
    void hold_back_blocks();

    const Problem& problem_;
    std::vector<std::vector<int>> successors_;
    std::vector<int> predecessors_;  // how many
    std::vector<int> block_of_;      // or `any`
};

}  // namespace kw::order
