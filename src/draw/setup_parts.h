#pragma once
// The two pictures that setup_view() chooses between, and what both need.

#include "draw/drawing.h"
#include "job/work.h"

namespace kw::draw {

Drawing joint_cut_view(const Work& work, const Setup& setup);
Drawing size_cut_view(const Work& work, const Setup& setup);

// The stock of the first part that goes through. The plan's parts are of stock that the job has.
const Stock& stock_of(const Work& work, const Setup& setup);

// "fence 1/4 in"
std::string measure_text(const Work& work, const char* what, Length length);

}  // namespace kw::draw
