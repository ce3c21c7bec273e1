#pragma once
// What is refused of a test cut as it is told, and why. Private to this folder.

#include "session/tested_group.h"

namespace kw {

// Each is empty where all is well. Names that the joint knows, each once, and readings within reason.
std::optional<Refusal> check_names(const TestedGroup& found, const TestCut& cut);
// Controls that are there, moved no farther than they can be.
std::optional<Refusal> check_moved(const TestedGroup& found, const TestCut& cut);
// Where the new cut does not take all that the old one took, the old test ends still show the old one.
std::optional<Refusal> check_ends(const Work& work, const TestedGroup& found, const TestCut& cut);
// Nothing that contradicts the rest, unless the maker is sure and it is within reason.
std::optional<Refusal> check_doubt(const TestedGroup& found, const TestCut& cut, const LogEntry& entry);

}  // namespace kw
