#pragma once
// The command line, read. Private to this folder.

#include <optional>

#include "command/run.h"

namespace kw {

struct Options {
    std::string command;  // empty: the window
    std::string job;
    std::string setup;
    bool json = false;
    bool csv = false;
    bool explain = false;
    bool save = false;
    bool fresh_end = false;
    bool anyway = false;
    bool before_torn_down = false;
    std::vector<std::string> readings;
    std::vector<std::string> moved;
    std::vector<std::string> parts;
    std::vector<std::string> stocks;  // that were broken down
    bool first = false;
    bool last = false;
    bool free = false;
    std::string away;
    std::string back;
    std::string drawer;
    int copy = 0;  // 0: not said
    bool order = false;
    std::string felt;
    bool sure = false;
    std::vector<std::string> seen;
    std::string with;
    std::string shots;
    std::string shop;
    int forget = 0;
    std::string correct;
    std::string unit;
    std::string out;    // the file for pages to print; empty: none
    std::string paper;  // empty: by the job's unit
};

// The exit status where that was all: help was asked for, or the usage was wrong.
std::optional<int> parse(std::vector<std::string> arguments, const CommandIo& io, Options& options);

}  // namespace kw
