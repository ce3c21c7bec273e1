// Bands on edges: facts of the trade (common practice, no source).
#include <doctest/doctest.h>

#include <algorithm>

#include "job/half_inch_job.h"

using namespace kw;
using half_inch::half_inch_job;
using half_inch::in;
using half_inch::place;
using half_inch::worked;

namespace {

Job banded(std::vector<BandedEdge> edges) {
    Job job = half_inch_job();
    job.stock[0].banding = Banding{in(1, 32), std::move(edges)};
    return job;
}

PartSize size_of(const Job& job, const char* part) { return worked(job)->plan.part_with_id(part)->size; }

}  // namespace

TEST_CASE("what is banded is cut smaller by the band, and is as large as ever when the band is on") {
    const Job plain = half_inch_job(), top = banded({BandedEdge::top});
    for (const char* id : {"a.1.front", "a.1.back", "a.1.side_left", "a.1.side_right"}) {
        CAPTURE(id);
        const auto work = worked(top);
        const Part& part = *work->plan.part_with_id(id);
        CHECK(part.size.width == size_of(plain, id).width - in(1, 32));
        CHECK(part.size.length == size_of(plain, id).length);
        CHECK(part.finished() == size_of(plain, id));
    }
    CHECK(size_of(top, "a.1.bottom") == size_of(plain, "a.1.bottom"));
}

TEST_CASE("the ends of a box's parts are joints, and its bottom edges run on the fence: neither is banded") {
    const Job ends = banded({BandedEdge::left, BandedEdge::right, BandedEdge::bottom});
    for (const char* id : {"a.1.front", "a.1.back", "a.1.side_left", "a.1.bottom"})
        CHECK(size_of(ends, id) == size_of(half_inch_job(), id));
}

TEST_CASE("a face is cut smaller on each edge that is banded") {
    Job job = half_inch_job();
    Stock face = job.stock[0];
    face.name = "face ply";
    face.banding = Banding{in(1, 32), {BandedEdge::left, BandedEdge::right, BandedEdge::top}};
    job.stock.push_back(face);
    job.drawers[0].face.stock = face.name;
    job.drawers[0].face.style = FaceStyle::overlay;
    Job plain = job;
    plain.stock.back().banding.reset();
    const auto work = worked(job);
    const Part* const cut = work->plan.part_with_id("a.1.face");
    REQUIRE(cut);
    const PartSize finished = size_of(plain, "a.1.face");
    CHECK(cut->size.length == finished.length - in(1, 16));
    CHECK(cut->size.width == finished.width - in(1, 32));
    CHECK(cut->finished() == finished);
    // The saw is set to what is cut.
    const Setup& crosscut = work->plan.setups[place(work->plan, "crosscut to length: faces")];
    CHECK(crosscut.fence == cut->size.length);
}

TEST_CASE("the cut of a joint doesn't move when the edge above it is banded") {
    const auto plain = worked(half_inch_job()), top = worked(banded({BandedEdge::top}));
    for (const Setup& setup : top->plan.setups)
        if (setup.height) {
            const Setup& other = plain->plan.setups[place(plain->plan, setup.work.c_str())];
            CHECK(setup.fence == other.fence);
            CHECK(setup.height == other.height);
        }
}

TEST_CASE("a face's own banding stands in place of its stock's, for that drawer's faces alone") {
    Job job = half_inch_job();
    job.stock[0].banding = Banding{in(1, 32), {BandedEdge::top}};
    job.drawers[0].face.stock = job.stock[0].name;
    job.drawers[0].face.style = FaceStyle::overlay;
    Job plain = job;
    plain.stock[0].banding.reset();
    const PartSize finished = size_of(plain, "a.1.face");
    const auto face_with = [&](FaceBanding own) {
        job.drawers[0].face.banding = std::move(own);
        const auto work = worked(job);
        const Part face = *work->plan.part_with_id("a.1.face");
        CHECK(face.finished() == finished);
        // What else is cut from the stock is banded as ever.
        CHECK(work->plan.part_with_id("a.1.front")->band == in(1, 32));
        CHECK(size_of(job, "a.1.front").width == size_of(plain, "a.1.front").width - in(1, 32));
        return face.size;
    };
    const PartSize thin = face_with({in(1, 64), {BandedEdge::left, BandedEdge::right, BandedEdge::bottom}});
    CHECK(thin.length == finished.length - in(1, 32));
    CHECK(thin.width == finished.width - in(1, 64));
    const PartSize as_thick = face_with({std::nullopt, {BandedEdge::left}});
    CHECK(as_thick.length == finished.length - in(1, 32));
    CHECK(as_thick.width == finished.width);
    CHECK(face_with({std::nullopt, {}}) == finished);
}

TEST_CASE(
    "a face may be banded where nothing else of its stock is, and the plan says by how much less it is cut") {
    Job job = half_inch_job();
    job.drawers[0].face.stock = job.stock[0].name;
    job.drawers[0].face.style = FaceStyle::overlay;
    const PartSize finished = size_of(job, "a.1.face");
    job.drawers[0].face.banding = FaceBanding{in(1, 16), {BandedEdge::top, BandedEdge::bottom}};
    const auto work = worked(job);
    CHECK(work->plan.part_with_id("a.1.face")->size.width == finished.width - in(1, 8));
    CHECK(size_of(job, "a.1.side_left").width == size_of(half_inch_job(), "a.1.side_left").width);
    const auto said = std::count_if(work->plan.notes.begin(), work->plan.notes.end(), [](const Note& note) {
        return note.text.text(Graduation::in_64).find("parts are cut 1/16 in smaller for each banded edge") ==
               0;
    });
    CHECK(said == 1);
}
