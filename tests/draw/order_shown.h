#pragma once
// The order of work, drawn while its next step is the one at hand.

#include "draw/order_view.h"
#include "draw/svg.h"

namespace order_shown {

inline std::string next_of(const kw::Work& work) {
    return work.rest.steps.empty() ? std::string() : work.rest.steps.front().step;
}

inline kw::draw::OrderView view_of(const kw::Work& work, const kw::draw::OrderRoom& room) {
    return kw::draw::order_view(work, next_of(work), room, kw::draw::paper_text_width);
}

}  // namespace order_shown
