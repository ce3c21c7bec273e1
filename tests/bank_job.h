// Two equal drawers and a deeper one of another name in one bank, whose column is 15 by 22 in.
#pragma once

#include "sample_job.h"

namespace kw::tests {

// `bank`: what the bank has beside its name, drawers and opening.
inline Json bank_job(const Json& bank) {
    Json job = sample_json();
    Json& seeds = job["drawers"][0];
    seeds["opening"] = {{"depth", "18"}};
    seeds.erase("face");
    Json tools = seeds;
    tools["name"] = "tools";
    tools["count"] = 1;
    job["drawers"].push_back(tools);
    Json made{{"name", "left column"},
              {"drawers", {"seeds", "tools"}},
              {"opening", {{"width", "15"}, {"height", "22"}}}};
    made.update(bank);
    job["banks"] = Json::array({made});
    return job;
}

}  // namespace kw::tests
