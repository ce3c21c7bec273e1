#pragma once
// What every command does that opens a job: reads it with the shop's file, says what is wrong with it, and saves both. Private to this folder.

#include "command/options.h"
#include "command/unread.h"
#include "session/session.h"

namespace kw {

struct Opened {
    std::string text;
    Session session;
    Json shop;  // what the shop's file says
};

class JobCommand {
public:
    JobCommand(const Options& options, const CommandIo& io) : options_(options), io_(io) {}

protected:
    // In what language: that of the command line, or the one that is chosen in the window's options.
    enum class Speaks { english, as_the_window };

    // Then of the job that could be opened and worked out; else 1, and why is said.
    template <class Then>
    int with_work(Then then, Speaks speaks = Speaks::english) const {
        const auto opened = open(speaks);
        return opened && is_made(*opened, opened->session) ? then(*opened) : 1;
    }

    // Whether what is asked can be made; what is wrong with it is said. Missing fields may only be misspelt.
    bool is_made(const Opened& opened, const Session& session) const;

    std::vector<UnreadField> unread_in_files(const std::string& text) const;
    const std::string& shop_file() const { return options_.shop.empty() ? io_.shop_file : options_.shop; }

    // Says it, at its place in the file. 1.
    int tell(const std::string& text, const FileError& error) const {
        return tell(text, error, options_.job);
    }
    int tell(const std::string& text, const FileError& error, const std::string& file) const;
    int refuse(const std::string& why) const;

    // The job, and when that is safe what it has taught, for the next. Says what could not be saved.
    bool save(const Opened& before, const Session& after) const;

    const Options& options_;
    const CommandIo& io_;

private:
    std::optional<Opened> open(Speaks speaks) const;
    bool save_learned(const Memory& before, const Memory& now) const;
};

// ISO 8601, UTC.
std::string utc_now();

}  // namespace kw
