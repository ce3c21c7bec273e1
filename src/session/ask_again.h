#pragma once
// What a maker is asked when a test cut contradicts what is known.

#include "job/job.h"
#include "testcut/doubt.h"

namespace kw {

// What contradicts, put to the maker: the likely culprit by name, and what would be right. `cut_before`: the joint was tested before this
// entry, at `setup`. `may_insist`: the maker may say that it is right all the same. `assumed`: the moves that were taken as made.
// `may_have_moved`: something else may have been moved, as was said to who can't measure.
Refusal ask_again(const Setup& setup, const Model& model, bool cut_before, const LogEntry& entry,
                  const Doubt& doubt, bool may_insist, const std::vector<NamedLength>& assumed,
                  bool may_have_moved);

// The remedy, and how to tell that the control was set otherwise than it was to be.
Message or_tell_the_setting(const Setup& setup, const Model& model, const Message& remedy,
                            const Doubt& setting, const std::vector<NamedLength>& assumed);

// Words for a fit, and for what is seen, in the maker's language; what is none, as it is.
Message feel_message(std::string_view word);
Message sight_message(std::string_view word);

}  // namespace kw
