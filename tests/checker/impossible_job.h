// Jobs that can't be made or can't be read, each for one planted reason.
#pragma once

#include <cstdint>
#include <string>

#include "checker/json.h"

namespace checker {

struct ImpossibleJob {
    std::string reason;  // what was planted, for the test's message
    Json job;
    std::string word;  // the refusal has to contain it, in upper or lower case
};

// How many reasons there are; seeds from 0 to that less one plant each of them once.
std::uint64_t impossible_reasons();

// A job that would be right but for one thing. The seed picks the thing, and varies the job around it.
ImpossibleJob impossible_job(std::uint64_t seed);

}  // namespace checker
