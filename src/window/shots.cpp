#include "window/shots.h"

#include <algorithm>

#include "job/comes_first.h"
#include "session/measured.h"
#include "window/screen_stand.h"
#include "window/shots_finger.h"
#include "window/shots_stock.h"

namespace kw::window {
namespace {

std::string setup_like(const Work& work, const std::function<bool(const Setup&)>& is_it) {
    for (const std::string& step : work.plan.sequence) {
        const Setup* setup = work.plan.setup_with_id(step.substr(0, step.find('#')));
        if (setup && is_it(*setup)) return step;
    }
    return {};
}

bool says(const Setup& setup, const char* word) { return setup.work.find(word) != std::string::npos; }

void go_to_saw(Theatre& stage, const std::string& setup, SawTab tab) {
    stage.state() = {};
    stage.state().place = Where::saw;
    stage.state().setup = setup;
    stage.state().saw_tab = tab;
}

// Ripped and crosscut, so that they can come to the joint.
void give_sizes(Theatre& stage, const std::string& id, const std::vector<std::size_t>& passes) {
    for (;;) {
        const auto first = what_comes_first(stage.work(), *stage.work().plan.setup_with_id(id), passes);
        if (!first || first->lock) return;
        MarkRun mark{first->setup->id, {}, true};
        for (std::size_t i = 0; i < first->setup->passes.size(); ++i)
            if (first->setup->passes[i].part == first->through) mark.passes.push_back(i);
        stage.act(mark);
    }
}

TestCut a_test(const Work& work, const std::string& id) {
    TestCut cut;
    cut.setup = id;
    const Setup& setup = *work.plan.setup_with_id(id);
    const std::vector<std::string> names = reading_names(work, id);
    const bool locking = std::find(names.begin(), names.end(), "dado_depth") != names.end();
    cut.readings.push_back(
        {locking ? "dado_depth" : "depth", setup.height.value_or(Length{}) - Length::micrometres(250)});
    if (!locking) return cut;
    cut.readings.push_back({"dado_width", setup.kerf});
    cut.readings.push_back({"lip", setup.fence + Length::micrometres(100)});
    cut.readings.push_back({"face_step", Length::micrometres(350)});
    cut.readings.push_back(
        {"fit", -Length::micrometres(150)});  // a blade that stands low leaves the tongue thick
    return cut;
}

// To the end of the page, as far as it goes.
void scroll_down(Theatre& stage) {
    ImGuiIO& io = ImGui::GetIO();
    io.AddMousePosEvent(io.DisplaySize.x * 0.25f, io.DisplaySize.y * 0.5f);
    for (int turn = 0; turn < 6; ++turn) {
        io.AddMouseWheelEvent(0, -20);
        stage.settle();
    }
}

Prepare at_saw(std::string setup, SawTab tab = SawTab::picture) {
    return [setup = std::move(setup), tab](Theatre& stage) { go_to_saw(stage, setup, tab); };
}

// What is planned is told in German already.
Prepare in_german(Prepare prepare) {
    return [prepare = std::move(prepare)](Theatre& stage) {
        prepare(stage);
        stage.state().preferences.language = Language::german;
    };
}

Prepare at_place(Where place, DrawersTab tab = DrawersTab::drawers) {
    return [place, tab](Theatre& stage) {
        stage.state() = {};
        stage.state().place = place;
        stage.state().tab = tab;
    };
}

// The setups go by other numbers once some of the work is pinned or done.
Prepare at_first(const std::string& work, SawTab tab) {
    return [work, tab](Theatre& stage) {
        go_to_saw(stage, setup_like(stage.work(), [&](const Setup& s) { return says(s, work.c_str()); }),
                  tab);
    };
}

// The last drawer, whose bottom is captured.
void put_fingers_on(Theatre& stage) {
    const std::string last = "/drawers/" + std::to_string(stage.work().job.drawers.size() - 1);
    for (const char* place : {"/front/joint", "/back/joint"}) stage.act(SetField{last + place, "box joint"});
}

void mark_an_error(Theatre& stage) {
    at_place(Where::drawers)(stage);
    stage.act(SetField{"/drawers/0/opening/width", "2 in"});
    stage.state().drafts["/drawers/0/opening/depth"] = {"18 3/0", "`18 3/0`: a fraction over zero"};
}

void open_a_keypad(Theatre& stage) {
    stage.act(Undo{});
    at_place(Where::drawers)(stage);
    stage.state().first_question = 1;  // in sight in every size
    stage.settle();
    press(stage, "Press to put it in");
}

// Of the first drawer.
void measure(Theatre& stage, Measured what,
             const std::vector<std::pair<const char*, const char*>>& readings) {
    for (const auto& [name, value] : readings)
        stage.act(SetField{*measured_pointer(what, 0, 1, name), value});
}

// That can't be: drawers of one name are alike.
void give_heights(Theatre& stage) {
    stage.act(SetField{"/banks/0/face_heights", {"5", nullptr}});
    stage.act(SetField{"/banks/0/heights", "given"});
}

// Where going on moves the same machine's controls: what stood there is still to be seen.
void go_on_at_the_machine(Theatre& stage) {
    std::optional<draw::SetupScene> before;
    std::string from;
    for (const std::string& step : stage.work().plan.sequence) {
        const Setup* setup = stage.work().plan.setup_with_id(step.substr(0, step.find('#')));
        const auto scene = setup ? draw::setup_scene(stage.work(), *setup) : std::nullopt;
        if (before && scene && draw::slides(*before, *scene)) {
            go_to_saw(stage, from, SawTab::picture);
            stage.settle();
            stage.state().setup = step;
            return;
        }
        before = scene;
        from = step;
    }
}

}  // namespace

std::vector<Shot> shots_of(const Work& work) {
    const auto dado = setup_like(work, [](const Setup& s) { return says(s, "locking rabbet: side dado"); });
    const auto rabbet = setup_like(work, [](const Setup& s) { return says(s, "locking rabbet: rabbet"); });
    const auto groove = setup_like(work, [](const Setup& s) { return says(s, "groove") && s.height; });
    const auto rip = setup_like(work, [](const Setup& s) { return s.stage == Stage::rip; });
    const auto crosscut =
        setup_like(work, [](const Setup& s) { return s.stage == Stage::crosscut && s.guide == "stop"; });
    // The same joint in other stock: another group.
    const auto other = setup_like(work, [&](const Setup& s) {
        const Setup* first = work.plan.setup_with_id(dado);
        return first && says(s, "locking rabbet: side dado") && s.group != first->group;
    });
    for (const std::string& wanted : {dado, rabbet, groove, rip, crosscut, other})
        if (wanted.empty()) return {};
    const auto dark = draw::Theme::dark;
    return {
        {"01-drawers", at_place(Where::drawers)},
        {"02-drawers-dark", at_place(Where::drawers), dark},
        {"03-stock", at_place(Where::drawers, DrawersTab::stock)},
        {"04-machines", at_place(Where::drawers, DrawersTab::shop)},
        {"05-fit", at_place(Where::drawers, DrawersTab::fit)},
        {"06-order", at_place(Where::order)},
        {"07-saw-rip", at_saw(rip)},
        {"08-saw-crosscut", at_saw(crosscut)},
        {"09-saw-side-dado", at_saw(dado)},
        {"10-saw-side-dado-dark", at_saw(dado), dark},
        {"11-saw-front-rabbet", at_saw(rabbet)},
        {"12-saw-groove", at_saw(groove)},
        {"13-joint-closed", at_saw(dado, SawTab::closed)},
        {"14-joint-closed-dark", at_saw(dado, SawTab::closed), dark},
        {"15-test-cut-empty", at_saw(dado, SawTab::test)},
        {"16-test-cut-corrected",
         [dado](Theatre& stage) {
             stage.act(SaveTest{a_test(stage.work(), dado)});
             go_to_saw(stage, dado, SawTab::test);
         }},
        {"17-test-cut-corrected-dark", at_saw(dado, SawTab::test), dark},
        {"18-test-cut-refused",
         [dado](Theatre& stage) {
             TestCut cut;
             cut.setup = dado;
             stage.act(SaveTest{cut});
             go_to_saw(stage, dado, SawTab::test);
         }},
        {"19-locked-and-running",
         [dado](Theatre& stage) {
             give_sizes(stage, dado, {0, 1});
             TestCut cut;
             cut.setup = dado;
             stage.act(LockGroup{cut});
             stage.act(MarkRun{dado, {0, 1}, true});
             go_to_saw(stage, dado, SawTab::picture);
         }},
        {"20-log", at_saw(dado, SawTab::log)},
        {"21-order-under-way", at_place(Where::order)},
        {"22-fence-fills-the-screen",
         [dado](Theatre& stage) {
             go_to_saw(stage, dado, SawTab::picture);
             stage.settle();
             Screen screen{stage.window.ui(), stage.app.session(), stage.state(), std::nullopt};
             stage.state().filling = fence_caption(screen, *stand_at(screen));
         }},
        {"23-what-is-learned",
         [](Theatre& stage) {
             at_place(Where::drawers, DrawersTab::shop)(stage);
             stage.settle();
             scroll_down(stage);
         }},
        {"24-set-by-its-scale", at_saw(groove)},
        {"24-moved-from-before", go_on_at_the_machine},
        {"24-moved-zoomed-dark",
         [](Theatre& stage) {
             stage.settle();
             press(stage, "Zoom to the cut");
         },
         dark},
        {"24-boards-fence-at-the-left",
         [dado](Theatre& stage) {
             go_to_saw(stage, dado, SawTab::picture);
             stage.state().preferences.fence_stands = Hand::left;
             stage.state().setup_picture.boards = true;
         }},
        {"25-seen-by-eye",
         [other](Theatre& stage) {
             go_to_saw(stage, other, SawTab::test);
             stage.state().test.setup = other;
             stage.state().test.by_eye = true;
             stage.state().test.seen = {{"face_step", "side a hair proud"}};
             stage.settle();
             scroll_down(stage);
         }},
        {"26-look-again",
         [other](Theatre& stage) {
             TestCut cut = a_test(stage.work(), other);
             for (NamedLength& reading : cut.readings)
                 if (reading.name == "fit")
                     reading.value = Length::micrometres(200);  // loose, by a wrong sign
             stage.act(SaveTest{cut});
             go_to_saw(stage, other, SawTab::test);
             stage.state().test.setup = other;
             stage.state().test.felt = 1;
         }},
        {"27-order-dragged",
         [](Theatre& stage) {
             at_place(Where::order)(stage);
             stage.settle();
             drag_last_to_beginning(stage);
         }},
        {"28-order-pinned",
         [](Theatre& stage) {
             let_go_nowhere(stage);
             const auto& left = stage.work().rest.steps;
             stage.act(PinSetup{left.back().setup, Pinned::first});
         }},
        {"29-drawer-with-errors", mark_an_error},
        {"30-keypad", open_a_keypad},
        {"31-first-start",
         [](Theatre& stage) {
             press(stage, "Cancel");
             at_place(Where::drawers)(stage);
             stage.state().first_question = 1;
         }},
        {"31-first-start-answered", [](Theatre& stage) { stage.state().first_question = 7; }},
        {"32-job", [](Theatre& stage) { at_place(Where::job)(stage); }},
        {"33-keys",
         [](Theatre& stage) {
             at_place(Where::job)(stage);
             stage.state().over = Over::keys;
         }},
        {"34-which-part-is-spoilt",
         [dado](Theatre& stage) {
             go_to_saw(stage, dado, SawTab::picture);
             stage.state().spoilt_at = dado;
         }},
        {"35-preferences",
         [](Theatre& stage) {
             at_place(Where::drawers)(stage);
             stage.state().over = Over::preferences;
         }},
        {"35-survey",
         [](Theatre& stage) {
             at_place(Where::drawers)(stage);
             stage.state().survey_open = true;
             measure(stage, Measured::opening,
                     {{"width_top", "11 1/16"},
                      {"width_bottom", "11 3/16"},
                      {"height_left", "5"},
                      {"diagonal_rising", "12 1/4"},
                      {"diagonal_falling", "12 3/32"},
                      {"frame_left", "3/4"}});
         }},
        {"35-no-bank",
         [](Theatre& stage) {
             stage.state().survey_open = false;
             at_place(Where::job)(stage);
             stage.state().job_tab = JobTab::faces;
         }},
        {"35-faces",
         [](Theatre& stage) {
             stage.act(GatherBank{});
             stage.act(SetField{"/banks/0/handles", {{"holes", 2}, {"centres", "96 mm"}}});
         }},
        {"35-faces-refused", give_heights},
        {"35-stock-sizes",
         [](Theatre& stage) {
             for (int i = 0; i < 4; ++i) stage.act(Undo{});
             stage.state().survey_open = false;
             say_sizes(stage);
             at_place(Where::drawers, DrawersTab::stock)(stage);
         }},
        {"35-layout",
         [](Theatre& stage) {
             at_place(Where::job)(stage);
             stage.state().job_tab = JobTab::layout;
             lay_out_parts(stage);
         }},
        {"35-layout-told", tell_broken_down},
        {"35-order-broken-down",
         [](Theatre& stage) {
             stage.act(Undo{});
             at_place(Where::order)(stage);
             lay_out_parts(stage);
         }},
        {"35-print",
         [](Theatre& stage) {
             at_place(Where::job)(stage);
             stage.state().job_tab = JobTab::print;
         }},
        {"35-together",
         [](Theatre& stage) {
             stage.state().survey_open = false;
             at_place(Where::job)(stage);
             stage.state().job_tab = JobTab::together;
             measure(stage, Measured::assembled,
                     {{"from_front_left", "20 23/32"},
                      {"from_front_right", "20 17/32"},
                      {"left_slide_front", "2 1/4"},
                      {"left_slide_rear", "2 3/16"},
                      {"left_top", "1/16"},
                      {"right_top", "3/16"},
                      {"top_left", "1/8"},
                      {"top_right", "7/32"}});
         }},
        {"35-together-in-order", [](Theatre& stage) { stage.state().assembly_order_open = true; }},
        {"35-jig",
         [](Theatre& stage) {
             put_fingers_on(stage);
             at_first("box joint: side sockets", SawTab::picture)(stage);
         }},
        {"35-jig-with-spacer", at_first("box joint: end sockets", SawTab::picture)},
        {"35-fingers-closed", at_first("box joint: side sockets", SawTab::closed)},
        {"35-fingers-test-cut", at_first("box joint: side sockets", SawTab::test)},
        {"36-german-drawers",
         [](Theatre& stage) {
             stage.act(SpeakIn{Language::german});
             in_german(at_place(Where::drawers))(stage);
         }},
        {"37-german-order", in_german(at_place(Where::order))},
        {"38-german-picture", in_german(at_first("locking rabbet: side dado", SawTab::picture))},
        {"39-german-test-cut", in_german(at_first("locking rabbet: side dado", SawTab::test))},
        {"39-german-jig", in_german(at_first("box joint: end sockets", SawTab::picture))},
        {"40-german-options",
         [](Theatre& stage) {
             in_german(at_place(Where::drawers))(stage);
             stage.state().over = Over::preferences;
         }},
    };
}

}  // namespace kw::window
