#include "window/shots_stock.h"

#include "job/on_hand.h"

namespace kw::window {

void say_sizes(Theatre& stage) {
    stage.act(SetField{"/stock/0/sizes",
                       {{{"length", "20"},
                         {"width", "14"},
                         {"offcut", true},
                         {"defects", {{{"x", "18 5/8"}, {"y", "0"}, {"length", "1"}, {"width", "1 1/2"}}}}},
                        {{"length", "60"}, {"width", "30"}, {"trim", "1/8"}, {"price", 38.5}}}});
    stage.act(SetField{"/stock/1/sizes", {{{"length", "48"}, {"width", "24"}}}});
    stage.act(SetField{"/stock/2/sizes", {{{"length", "72"}, {"trim", "1/2"}}}});
}

void lay_out_parts(Theatre& stage) {
    const auto work = stage.app.session().work;
    stage.state().lay_out = shown_lay_out(work, lay_out(work->job, work->plan, work->standing));
}

void tell_broken_down(Theatre& stage) {
    const ShownLayOut& shown = stage.state().lay_out;
    stage.act(MarkBrokenDown{broken_down_of(shown.of->job, shown.layout->stocks.front())});
    lay_out_parts(stage);
}

}  // namespace kw::window
