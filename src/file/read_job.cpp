#include "file/read_job.h"
#include "setup/bit_passes.h"
#include "setup/make_up.h"
#include "setup/shims.h"

#include <algorithm>
#include <set>

#include "file/read_bank.h"
#include "file/read_case.h"
#include "file/read_log.h"
#include "file/read_stock.h"
#include "job/banks.h"
#include "wood/emc.h"

namespace kw {
namespace {

std::optional<Unit> unit_named(std::string_view name) {
    if (name == "in") return Unit::inch;
    if (name == "mm") return Unit::millimetre;
    if (name == "cm") return Unit::centimetre;
    return std::nullopt;
}

std::optional<BottomStyle> bottom_style_named(std::string_view name) {
    if (name == "slide in") return BottomStyle::slide_in;
    if (name == "captured") return BottomStyle::captured;
    return std::nullopt;
}

// A tolerance of nothing leaves no joint in it, however it is cut.
Length read_tolerance(Fields& fields, const std::string& name, Length usual) {
    const Length tolerance = fields.length(name, usual);
    if (tolerance > Length{}) return tolerance;
    fields.blame(name, Message::say("file.tolerance", Message::name("file.field.", name)),
                 Message::say("file.is_usual", usual));
    return usual;
}

FitRules read_fit(Fields fit) {
    FitRules rules;
    rules.clearance = fit.signed_length("clearance", rules.clearance);
    rules.end_relief = fit.length("end_relief", rules.end_relief);
    rules.groove_clearance = fit.length("groove_clearance", rules.groove_clearance);
    rules.bottom_slack = fit.length("bottom_slack", rules.bottom_slack);
    rules.step = fit.length("step", rules.step);
    Fields tolerance = fit.object("tolerance");
    rules.tolerance.fit = read_tolerance(tolerance, "fit", rules.tolerance.fit);
    rules.tolerance.shoulder_gap = tolerance.length("shoulder_gap", rules.tolerance.shoulder_gap);
    rules.tolerance.step = read_tolerance(tolerance, "step", rules.tolerance.step);
    rules.tolerance.depth = read_tolerance(tolerance, "depth", rules.tolerance.depth);
    rules.tolerance.place = read_tolerance(tolerance, "place", rules.tolerance.place);
    rules.wanted_chance = fit.number("wanted_chance", rules.wanted_chance);
    if (rules.wanted_chance <= 0.0 || rules.wanted_chance >= 1.0)
        fit.blame("wanted_chance", Message::say("file.between"), Message::say("file.chance_usual"));
    return rules;
}

// A moisture content in percent, or the air that the wood settles in.
double read_moisture(Fields& climate, const std::string& name, double usual) {
    if (!climate.is_object(name)) return climate.number(name, usual);
    Fields fields = climate.object(name);
    const Air air{fields.number("temperature", 20.0), fields.number("humidity", 50.0)};
    const auto moisture = equilibrium_moisture_percent(air);
    if (moisture) return *moisture;
    fields.blame(moisture.error().field, moisture.error().why, moisture.error().remedy);
    return usual;
}

Climate read_climate(Fields fields) {
    Climate climate;
    climate.driest_percent = read_moisture(fields, "driest", climate.driest_percent);
    climate.dampest_percent = read_moisture(fields, "dampest", climate.dampest_percent);
    if (const auto wrong = check_climate(climate)) fields.blame(wrong->field, wrong->why, wrong->remedy);
    return climate;
}

Machine read_machine(Fields fields) {
    const std::string name = fields.required_text("name");
    const auto kind = fields.one_of("kind", machine_kind_named, {"table saw", "router table", "miter saw"},
                                    MachineKind::table_saw);
    Machine machine = usual_machine(name, kind);
    machine.max_dado_width = fields.length("max_dado_width", machine.max_dado_width);
    machine.max_height = fields.length("max_height", machine.max_height);
    machine.least_part = fields.length("least_part", machine.least_part);
    machine.fence_step = fields.length("fence_step", machine.fence_step);
    machine.height_step = fields.length("height_step", machine.height_step);
    machine.fence_repeats = fields.length("fence_repeats", machine.fence_repeats);
    machine.height_repeats = fields.length("height_repeats", machine.height_repeats);
    machine.is_away = fields.truth("away", false);
    machine.height_per_turn = fields.optional_length("height_per_turn");
    return machine;
}

// A stack's kerf, where it is not given, is what its outer cutters, chippers and shims add up to.
Cutter read_cutter(Fields fields) {
    Cutter cutter;
    cutter.name = fields.required_text("name");
    cutter.kind =
        fields.one_of("kind", cutter_kind_named, {"blade", "dado stack", "bit"}, CutterKind::dado_stack);
    cutter.machine = fields.required_text("machine");
    cutter.shims = fields.lengths("shims");
    cutter.spares = fields.lengths("spare_shims");
    cutter.chippers = fields.lengths("chippers");
    cutter.spare_chippers = fields.lengths("spare_chippers");
    for (const char* list : {"shims", "spare_shims", "chippers", "spare_chippers"})
        cutter.as_written.merge(fields.as_written(list));
    if (cutter.kind != CutterKind::dado_stack)
        for (const char* list : {"shims", "spare_shims", "chippers", "spare_chippers"})
            if (fields.has(list))
                fields.blame(list,
                             Message::say(std::string(list).ends_with("shims") ? "file.takes_no_shims"
                                                                               : "file.takes_no_chippers",
                                          Message::name("file.cutter.", name_of(cutter.kind))),
                             Message::say("file.leave_out", in_quotes(name_of(CutterKind::dado_stack))));
    cutter.depth_per_pass = fields.optional_length("depth_per_pass");
    if (cutter.depth_per_pass && cutter.kind != CutterKind::bit)
        fields.blame(
            "depth_per_pass",
            Message::say("file.takes_no_passes", Message::name("file.cutter.", name_of(cutter.kind))),
            Message::say("file.leave_pass_out"));
    else if (cutter.depth_per_pass && *cutter.depth_per_pass < least_bit_pass)
        fields.blame("depth_per_pass", Message::say("file.pass_too_thin", *cutter.depth_per_pass),
                     Message::say("file.pass_at_least", least_bit_pass));
    const Length stack = sum_of(fields.lengths("outer")) + sum_of(cutter.chippers) + sum_of(cutter.shims);
    cutter.kerf = stack > Length{} && !fields.has("kerf") ? stack : fields.required_length("kerf");
    if (sum_of(cutter.chippers) + shims_in(cutter) >= cutter.kerf && shims_in(cutter) < cutter.kerf)
        fields.blame(
            "chippers",
            Message::say("file.pieces_too_thick", sum_of(cutter.chippers) + shims_in(cutter), cutter.kerf),
            Message::say("file.only_in_stack"));
    if (shims_in(cutter) >= cutter.kerf && cutter.kerf > Length{})
        fields.blame("shims", Message::say("file.shims_too_thick", shims_in(cutter), cutter.kerf),
                     Message::say("file.only_in_stack"));
    return cutter;
}

Slide read_slide(Fields fields) {
    const auto kind =
        fields.one_of("kind", slide_kind_named,
                      {"side mount", "bottom corner", "undermount", "wooden runner"}, SlideKind::side_mount);
    Slide slide = usual_slide(kind);
    slide.side = fields.length("side", slide.side);
    slide.top = fields.length("top", slide.top);
    slide.bottom = fields.length("bottom", slide.bottom);
    slide.back = fields.length("back", slide.back);
    slide.lengths = fields.lengths("lengths");
    slide.take_up = fields.length("take_up", slide.take_up);
    slide.note = fields.text("note", {});
    slide.setback = fields.length("setback", slide.setback);
    slide.middle = fields.optional_length("middle");
    return slide;
}

void read_size(Fields& fields, DrawerSpec& drawer, const BankSpec* bank) {
    if (fields.has("box")) {
        Fields box = fields.object("box");
        drawer.box = BoxSize{box.required_length("width"), box.required_length("height"),
                             box.required_length("depth")};
    }
    if (fields.has("opening") || !fields.has("box")) {
        Fields opening = fields.object("opening", !bank);
        if (fields.has("opening") || bank) read_opening(opening, drawer, bank);
    }
    drawer.slide = read_slide(fields.object("slide"));
}

BackSpec read_back(Fields fields) {
    BackSpec back;
    back.stock = fields.required_text("stock");
    back.joint = fields.text("joint", back.joint);
    back.cutter = fields.text("cutter", {});
    back.dado_width = fields.optional_length("dado_width");
    back.depth = fields.optional_length("depth");
    back.setback = fields.length("setback", back.setback);
    return back;
}

BottomSpec read_bottom(Fields fields) {
    BottomSpec bottom;
    bottom.stock = fields.required_text("stock");
    bottom.joint = fields.text("joint", bottom.joint);
    bottom.cutter = fields.text("cutter", {});
    bottom.offset = fields.length("offset", bottom.offset);
    bottom.depth = fields.optional_length("depth");
    bottom.style =
        fields.one_of("style", bottom_style_named, {"slide in", "captured"}, BottomStyle::slide_in);
    return bottom;
}

// Where a bank says how faces lie, a drawer says nothing else.
void leave_to_bank(Fields& face, const BankSpec& bank) {
    for (const char* field : {"style", "left", "right", "top", "bottom", "reveal"})
        if (face.has(field) && (field != std::string("style") || face.text(field, {}) != name_of(bank.style)))
            face.blame(field, Message::say("bank.says_it", bank.name), Message::say("bank.leave_out"));
}

FaceSpec read_face(Fields fields, const BankSpec* bank, const Job& job) {
    FaceSpec face;
    face.stock = fields.text("stock", {});
    if (fields.has("banding"))
        face.banding = read_face_banding(fields.object("banding"), job.stock_named(face.stock));
    face.style = fields.one_of("style", face_style_named, {"overlay", "inset", "none"}, FaceStyle::none);
    face.left = fields.length("left", {});
    face.right = fields.length("right", {});
    face.top = fields.length("top", {});
    face.bottom = fields.length("bottom", {});
    face.reveal = fields.length("reveal", face.reveal);
    if (bank) leave_to_bank(fields, *bank);
    return face;
}

DrawerSpec read_drawer(Fields fields, const Job& job) {
    DrawerSpec drawer;
    drawer.name = fields.required_text("name");
    drawer.count = fields.count("count", 1, 1, 1000);
    const BankSpec* bank = bank_of(job.banks, drawer.name);
    read_size(fields, drawer, bank);
    drawer.side_stock = fields.object("sides", true).required_text("stock");
    Fields front = fields.object("front", true);
    drawer.front = {front.required_text("stock"), front.text("joint", "locking rabbet"),
                    front.text("cutter", {}), front.optional_length("dado_width"),
                    front.optional_length("depth")};
    drawer.back = read_back(fields.object("back", true));
    drawer.bottom = read_bottom(fields.object("bottom", true));
    drawer.face = read_face(fields.object("face"), bank, job);
    drawer.assembled = read_assembled(fields.object("assembled"), drawer.count);
    return drawer;
}

WorkTimes read_times(Fields fields) {
    WorkTimes times;
    const auto read = [&](const char* name, std::int64_t& seconds) {
        seconds = fields.count(name, static_cast<int>(seconds), 0, 100'000);
    };
    read("machine", times.machine_s);
    read("cutter", times.cutter_s);
    read("shims", times.shims_s);
    read("fence", times.fence_s);
    read("height", times.height_s);
    read("spacer", times.spacer_s);
    read("test_cut", times.test_cut_s);
    read("pass", times.pass_s);
    read("index", times.index_s);
    read("rough_cut", times.rough_cut_s);
    return times;
}

Pins read_pins(Fields fields) { return {fields.texts("first"), fields.texts("last")}; }

template <class Items, class Name>
void check_names(const Items& items, Name name_of_item, const std::string& list,
                 std::vector<Problem>& problems) {
    std::set<std::string> seen;
    for (std::size_t i = 0; i < items.size(); ++i)
        if (!seen.insert(name_of_item(items[i])).second)
            problems.push_back({"/" + list + "/" + std::to_string(i) + "/name",
                                Message::say("file.two_named." + list, name_of_item(items[i])),
                                Message::say("file.own_name")});
}

void use_default_shop(Shop& shop) {
    if (shop.machines.empty()) shop.machines.push_back(usual_machine("saw", MachineKind::table_saw));
    if (!shop.cutters.empty()) return;
    const auto found = std::find_if(shop.machines.begin(), shop.machines.end(), [](const Machine& machine) {
        return machine.kind != MachineKind::miter_saw;
    });
    const Machine& machine = found == shop.machines.end() ? shop.machines.front() : *found;
    const bool router = machine.kind == MachineKind::router_table;
    shop.cutters.push_back({router ? "quarter bit" : "quarter stack",
                            router ? CutterKind::bit : CutterKind::dado_stack, machine.name,
                            Length::inches(1, 4)});
}

void check_format(Fields& fields, std::vector<Problem>& problems) {
    const std::string format = fields.required_text("format");
    if (!format.empty() && format != "kerfwright-job")
        problems.push_back({"/format", Message::say("file.no_job", format), Message::say("file.job_format")});
    const int version = fields.count("version", job_version, 1, 1'000'000);
    if (version > job_version)
        problems.push_back({"/version", Message::say("file.job_version", version, job_version),
                            Message::say("file.newer_program")});
}

}  // namespace

const std::vector<std::pair<std::string_view, Graduation>>& graduation_names() {
    static const std::vector<std::pair<std::string_view, Graduation>> names = {
        {"1/64 in", Graduation::in_64},   {"1/32 in", Graduation::in_32},   {"1/16 in", Graduation::in_16},
        {"0.001 in", Graduation::in_001}, {"0.01 mm", Graduation::mm_0_01}, {"0.1 mm", Graduation::mm_0_1},
        {"0.5 mm", Graduation::mm_0_5}};
    return names;
}

std::string_view name_of(Graduation graduation) {
    for (const auto& [name, known] : graduation_names())
        if (known == graduation) return name;
    return {};
}

std::optional<Graduation> graduation_named(std::string_view name) {
    for (const auto& [known, graduation] : graduation_names())
        if (known == name) return graduation;
    return std::nullopt;
}

std::vector<std::string_view> graduation_choice() {
    std::vector<std::string_view> all;
    for (const auto& [name, _] : graduation_names()) all.push_back(name);
    return all;
}

void read_what_shops_share(Fields& fields, Job& job) {
    for (Fields& item : fields.array("machines")) job.shop.machines.push_back(read_machine(item));
    for (Fields& item : fields.array("cutters")) job.shop.cutters.push_back(read_cutter(item));
    job.times = read_times(fields.object("times"));
}

Job read_job(const Json& json, std::vector<Problem>& problems, Asked* asked) {
    Job job;
    Fields head(&json, "", Unit::inch, problems, asked);
    check_format(head, problems);
    job.unit = head.one_of("unit", unit_named, {"in", "mm", "cm"}, Unit::inch);
    Fields fields(&json, "", job.unit, problems, asked);
    job.name = fields.text("name", "Drawers");
    job.locale = fields.one_of("reading", graduation_named, graduation_choice(),
                               job.unit == Unit::inch ? Graduation::in_64 : Graduation::mm_0_1);
    job.tool = fields.one_of("measured_with", tool_named, {"caliper", "rule"}, Tool::caliper);
    job.fit = read_fit(fields.object("fit"));
    job.climate = read_climate(fields.object("climate"));
    for (Fields& item : fields.array("stock", true)) job.stock.push_back(read_stock(item));
    read_what_shops_share(fields, job);
    use_default_shop(job.shop);
    job.cutting = read_cutting(fields.object("cutting"));
    job.pins = read_pins(fields.object("pins"));
    for (Fields& item : fields.array("banks")) job.banks.push_back(read_bank(item));
    for (Fields& item : fields.array("drawers", true)) job.drawers.push_back(read_drawer(item, job));
    if (fields.has("drawers") && job.drawers.empty() && problems.empty())
        fields.blame("drawers", Message::say("file.no_drawers"), Message::say("file.add_one"));
    job.log = read_log(fields);
    check_names(
        job.stock, [](const Stock& s) { return s.name; }, "stock", problems);
    check_names(
        job.shop.machines, [](const Machine& m) { return m.name; }, "machines", problems);
    check_names(
        job.shop.cutters, [](const Cutter& c) { return c.name; }, "cutters", problems);
    check_names(
        job.drawers, [](const DrawerSpec& d) { return d.name; }, "drawers", problems);
    check_names(
        job.banks, [](const BankSpec& b) { return b.name; }, "banks", problems);
    hang_in_banks(job, problems);
    return job;
}

tl::expected<Job, std::vector<Problem>> read_job(const Json& json) {
    std::vector<Problem> problems;
    if (!json.is_object())
        return tl::unexpected(std::vector<Problem>{
            {"", Message::say("file.job_is_object"), Message::say("file.write_object")}});
    Job job = read_job(json, problems, nullptr);
    if (!problems.empty()) return tl::unexpected(std::move(problems));
    return job;
}

}  // namespace kw
