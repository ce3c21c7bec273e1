#pragma once
// A problem as the searches use it: sets of operations as bits, and the values of each attribute as labels.
//
// A view is one thing that takes time to change: an attribute of a machine, or (the last one) where the person stands. Every operation
// that asks something of a view asks for a label, from 1; label 0 is "none". Changing to a label costs its weight. Where all work
// that needs an attribute also needs what it hangs on, the label stands for the values of all of these together: then the number
// of changes of label is the number of times the attribute is set, invalidations included.

#include <limits>

#include "order/bits.h"
#include "order/choices.h"
#include "order/from_to.h"
#include "order/problem.h"

namespace kw::order {

using Mask = std::uint32_t;  // attributes of a machine

struct View {
    std::vector<std::int64_t> weight;  // by label: what setting it takes; with a from-to table, at least
    std::vector<Bits> asked_by;        // by label: the operations that ask for it; none for label 0
    Bits asked;                        // all of them together
    Label start = 0;
    FromTo from_to{};
};

struct Work {
    std::size_t machine = 0;
    Mask needs = 0;
    std::vector<Label> label;  // by attribute of its machine
    std::vector<std::size_t> groups;
    OptionOf option;
    std::int64_t duration_s = 0;
};

struct Way {  // an option
    Bits operations;
    std::int64_t duration_s = 0;  // of them all
    std::int64_t own_s = 0;       // this, and what must be set at least once for it alone
};

struct Shop {                    // a machine
    std::size_t first_view = 0;  // its attributes' views follow each other
    std::size_t attributes = 0;
    std::vector<Mask> hangs;  // by attribute: what is invalidated by changing it
    std::vector<std::size_t> groups;
    bool orderly = false;  // see expand.h
};

struct Held {  // a group
    Bits operations;
    Mask held = 0;
    bool begun = false;
    Bits wait_for;  // outsiders that must be done before one of its operations, and wait for none of them
};

struct Model {
    std::size_t count = 0;  // of operations
    std::vector<Work> works;
    std::vector<Shop> shops;
    std::vector<Held> groups;
    std::vector<std::vector<Way>> choices;
    std::vector<View> views;
    std::vector<Bits> before;  // as of precedence.h
    std::vector<Parts> before_parts;
    std::int64_t duration_s = 0;  // of all operations that are done in any case: what no order changes

    std::size_t words() const { return words_for(count); }
    std::size_t place() const {
        return views.size() - 1;
    }  // the view of where the person stands; machine m has label m + 1
    Label nowhere() const {
        return static_cast<Label>(shops.size() + 1);
    }  // its label before the first walk, which is free
};

Model model_of(const Problem& problem, std::vector<Bits> before);

}  // namespace kw::order
