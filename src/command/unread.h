#pragma once
// What the job's file and the shop's hold that nothing reads. Private to this folder.

#include <memory>
#include <string>
#include <vector>

#include "file/document.h"

namespace kw {

struct UnreadField {
    std::string file;                         // its path
    std::shared_ptr<const std::string> text;  // of the whole file
    FileError error;
    Note note;  // "line 12, column 7" is what it is about; of the shop's file, with its name before that
};

// No more than twenty of each file: the rest is likely another program's own. `shop`: the path of the shop's file; one that is not there, or is no JSON, has none.
std::vector<UnreadField> unread_fields(const std::string& job, const std::string& job_text,
                                       const std::string& shop);

std::vector<Note> notes_of(const std::vector<UnreadField>& unread);

// As errors are reported, one after another.
std::string report(const std::vector<UnreadField>& unread);

}  // namespace kw
