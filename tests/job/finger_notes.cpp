// What is told of a box joint's top edge and of where the bottom's groove comes out. Common practice, no source; worked on paper.
#include "half_inch_job.h"

using namespace half_inch;

namespace {

// The same with another joint in front: only the back is fingered.
Job fingered_behind() {
    Job job = fingered_job();
    job.drawers.front().front.joint = "locking rabbet";
    return job;
}

int count_of(const std::vector<Note>& notes, const std::string& words) {
    return static_cast<int>(std::count_if(notes.begin(), notes.end(), [&](const Note& note) {
        return note.text.text(Graduation::in_64).find(words) != std::string::npos;
    }));
}

}  // namespace

TEST_CASE("a splinter of a finger at the top edge is told of, with the heights that end in a whole one") {
    Job job = fingered_job();
    CHECK_FALSE(says(worked(job)->plan.notes, "the last finger"));
    job.drawers.front().box->height = in(4) + in(1, 32);
    CHECK(says(
        worked(job)->plan.notes,
        "the last finger at the top edge is only 1/32 in wide, and may break: a box 4 in or 4 1/4 in high"));
}

TEST_CASE("where the groove comes out is told: in the sides' fingers behind a face, else where it is seen") {
    // Quarter fingers: the sides have theirs from 1/2 in to 3/4 in up, and the groove is a quarter wide.
    Job job = fingered_job();
    const char* beside = "leaves holes 1/4 in deep at both ends of each side";
    CHECK_FALSE(says(worked(job)->plan.notes, beside));
    job.drawers.front().face.style = FaceStyle::none;
    CHECK(says(worked(job)->plan.notes, "seen from the front: plug it"));
    job.drawers.front().bottom.offset = in(3, 8);
    CHECK(says(worked(job)->plan.notes, beside));
    job.drawers.front().face.style = FaceStyle::overlay;
    CHECK(says(worked(job)->plan.notes, "set 1/2 in up instead of 3/8 in"));
}

TEST_CASE("a groove is not told to be moved so low that little wood is left under it") {
    Job job = fingered_job();
    job.shop.cutters.front().kerf = in(3, 8);  // the sides' fingers begin at 0 and at 3/4 in
    job.drawers.front().bottom.offset = in(1, 4);
    job.drawers.front().face.style = FaceStyle::overlay;
    CHECK(says(worked(job)->plan.notes, "set 3/4 in up instead of 1/4 in"));
}

TEST_CASE("what all four corners have in common is told once") {
    Job job = fingered_job();
    job.drawers.front().box->height = in(4) + in(1, 32);
    const auto work = worked(job);
    CHECK(count_of(work->plan.notes, "the last finger at the top edge") == 1);
    CHECK(count_of(work->plan.notes, "fit the pin to the sockets") == 1);
}

TEST_CASE("a higher box is not advised where none goes into the opening") {
    Job job = fingered_job();
    job.drawers.front().box.reset();
    job.drawers.front().opening = Opening{in(11), in(6), in(27, 2)};
    Slide& slide = job.drawers.front().slide;
    slide.top = in(1) - in(1, 32);
    slide.bottom = in(1);
    const auto work = worked(job);
    CHECK(says(work->plan.notes, "a box 4 in high ends in a whole one; a higher one does not go in"));
    CHECK_FALSE(says(work->plan.notes, "or 4 1/4 in"));
}

TEST_CASE("a box whose size is given is held against the opening that it goes into") {
    Job job = fingered_job();
    job.drawers.front().box->height = in(4) + in(1, 32);
    job.drawers.front().opening = Opening{in(11), in(8), in(27, 2)};
    CHECK(says(worked(job)->plan.notes, "a box 4 in or 4 1/4 in high"));
    job.drawers.front().opening->height = in(21, 4);  // the slide takes 1 1/4 in of that
    job.drawers.front().slide.top = in(1);
    job.drawers.front().slide.bottom = in(1, 4);
    CHECK(says(worked(job)->plan.notes, "a higher one does not go in"));
}

TEST_CASE("the top finger of boards with a banded edge is that of the boards as they are cut") {
    Job job = fingered_job();
    job.stock.front().banding = Banding{in(1, 32), {BandedEdge::top}};
    // With its band on the box ends in a splinter, as the boards are cut in a whole finger; and the other way round.
    job.drawers.front().box->height = in(4) + in(1, 32);
    CHECK_FALSE(says(worked(job)->plan.notes, "the last finger"));
    job.drawers.front().box->height = in(4) + in(1, 16);
    CHECK(says(worked(job)->plan.notes, "is only 1/32 in wide, and may break: a box 4 1/32 in or 4 9/32 in"));
}

TEST_CASE("of a front with a band and sides without, each is told of by its own height") {
    Job job = fingered_job();
    Stock banded = job.stock.front();
    banded.name = "banded half";
    banded.banding = Banding{in(1, 32), {BandedEdge::top}};
    job.stock.push_back(banded);
    job.drawers.front().front.stock = banded.name;
    // The sides begin with a finger, and at 4 in would begin another: theirs is the splinter at 4 1/32 in, and the front ends whole.
    job.drawers.front().box->height = in(4) + in(1, 32);
    CHECK(says(worked(job)->plan.notes, "a box 4 in or 4 1/4 in high"));
    // At 4 1/4 in a finger of the front's would begin: its board is cut 4 1/4 in high, and the sides' 4 9/32 in end in a socket.
    job.drawers.front().back.joint = "dado";
    job.drawers.front().back.depth = in(1, 4);
    job.drawers.front().box->height = in(4) + in(9, 32);
    CHECK_FALSE(says(worked(job)->plan.notes, "the last finger"));
}

TEST_CASE("a back that alone is fingered is told where its groove comes out: beside and behind") {
    Job job = fingered_behind();  // the groove is in the sides' second finger
    CHECK(says(worked(job)->plan.notes, "at each end of the back, seen from behind"));
    CHECK_FALSE(says(worked(job)->plan.notes, "in each side"));
    CHECK_FALSE(says(worked(job)->plan.notes, "no offset"));
    job.drawers.front().bottom.offset = in(3, 8);
    const auto work = worked(job);
    CHECK(says(work->plan.notes,
               "where the back's fingers come through, the groove leaves a hole 1/4 in deep in each side"));
    CHECK(says(work->plan.notes, "set 1/2 in up instead of 3/8 in"));
}

TEST_CASE("where no offset hides the groove, that is said") {
    Job job = fingered_job();
    job.drawers.front().face.style = FaceStyle::overlay;
    job.shop.cutters.push_back({"ripping blade", CutterKind::blade, "saw", in(1, 8)});
    job.drawers.front().front.cutter = job.drawers.front().back.cutter =
        "ripping blade";  // a groove of two fingers
    const auto work = worked(job);
    CHECK(says(work->plan.notes,
               "no offset of the bottom brings the groove, 1/4 in wide, into the sides' fingers alone"));
    CHECK_FALSE(says(work->plan.notes, "instead of"));
}

TEST_CASE(
    "without a face the groove is told to lie in the front's fingers, which show it from beside alone") {
    Job job = fingered_job();
    job.drawers.front().face.style = FaceStyle::none;
    CHECK(says(worked(job)->plan.notes,
               "set 3/4 in up instead of 1/2 in, the groove would lie in the front's fingers alone"));
    job.drawers.front().bottom.offset = in(3, 4);
    CHECK_FALSE(says(worked(job)->plan.notes, "instead of"));
}

TEST_CASE("corners of two cutters are looked at by themselves, and an offset must do for both") {
    Job job = fingered_job();
    job.shop.cutters.push_back({"half stack", CutterKind::dado_stack, "saw", in(1, 2)});
    job.drawers.front().front.cutter = "quarter stack";
    job.drawers.front().back.cutter = "half stack";
    job.drawers.front().face.style = FaceStyle::overlay;
    job.drawers.front().bottom.offset = in(3, 8);
    job.drawers.front().box->height = in(5) + in(1, 32);
    const auto work = worked(job);
    // In front fingers of 1/4 in begin at 0, 1/2 in, 1 in; behind of 1/2 in at 0, 1 in.
    CHECK(says(work->plan.notes, "set 1 in up instead of 3/8 in"));
    CHECK(says(work->plan.notes,
               "at the front's corners: the last finger at the top edge is only 1/32 in wide"));
    CHECK(says(work->plan.notes,
               "at the back's corners: the last finger at the top edge is only 1/32 in wide"));
}
