#include "order/choices.h"

namespace kw::order {

std::vector<OptionOf> options_of(const Problem& problem) {
    std::vector<OptionOf> of(problem.operations.size());
    for (std::size_t c = 0; c < problem.choices.size(); ++c)
        for (std::size_t o = 0; o < problem.choices[c].options.size(); ++o)
            for (const std::size_t operation : problem.choices[c].options[o]) of[operation] = {c, o};
    return of;
}

}  // namespace kw::order
