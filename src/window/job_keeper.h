#pragma once
// The open job as it truly stands: takes the actions in the order in which they were asked for, keeps each result on the disk,
// and says what came of it. All of that is done aside; the window shows what is known meanwhile.

#include <atomic>
#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include "file/shop_file.h"
#include "memory/preferences.h"
#include "session/session.h"
#include "window/aside.h"
#include "window/job_file.h"
#include "window/theme.h"

namespace kw::window {

struct AskedAction {
    Action action;
    std::string time;
    std::shared_ptr<const Work> seen{};  // what was shown when it was asked for
};

struct Said {
    std::string text;
    Tone tone = Tone::plain;
    bool is_refusal = false;
};

// What came of the first of the actions that were asked for and not answered yet.
struct Answer {
    std::size_t actions = 0;
    Session session;  // after them
    std::vector<Said> said;
    bool test_taken = false;  // a test cut went into the log
    bool file_taken = false;  // what others had written into the job's file came into the session
};

// How a search for the best order stands that has not ended.
struct SearchNews {
    std::int64_t best_s = 0;
    std::int64_t bound_s = 0;
    bool is_ending = false;  // the maker has had enough of it
};

struct KeptJob {
    JobFile file;
    std::filesystem::path shop_path;  // empty: what is learned is not kept
    ShopFile shop;                    // as it was read or written last
    Session session;
};

class JobKeeper {
public:
    // `wake` is called when there is something new, from whichever thread.
    JobKeeper(KeptJob kept, bool in_a_thread, std::function<void()> wake);
    // All that was asked for is done first, but for searching the order to its end, which nobody will see.
    ~JobKeeper() { stop_searching(); }
    JobKeeper(const JobKeeper&) = delete;
    JobKeeper& operator=(const JobKeeper&) = delete;

    // Works out the job as it was handed over, and answers with it.
    void begin();
    void ask(AskedAction asked);
    // The next answer, if one has come.
    std::optional<Answer> answer();
    // Of the search that is under way; nothing where none has found an order yet.
    std::optional<SearchNews> search_news() const;
    // All that was asked for so far is answered with the best order that is found. It stands until something is asked for on which the order depends.
    void stop_searching();
    // Is asked too whether a search goes on, aside. To be set before anything is asked for.
    void watch_with(Watch other) { other_ = std::move(other); }
    void turn() { aside_.turn(); }
    void finish() { aside_.finish(); }
    // Takes up what others have written into the job's file, and answers where there is something new in it.
    void look_at_file();
    // Does all that was asked for; what can't be saved in the job's file even then is written beside it, or where that can't be, into
    // this folder. What is to be said of it; empty: all is saved. The keeper is done with.
    std::string end(const std::filesystem::path& other_folder);
    // Writes what was changed into the shop's file; nothing where there is none.
    void keep(const Preferences& before, const Preferences& now);
    // Whatever it holds is given back aside: a large job takes milliseconds to forget.
    void forget(Session session);

private:
    std::vector<AskedAction> next_asked();
    void take_next();
    void give(Answer answer);
    Answer take_edits(const std::vector<AskedAction>& edits);
    Answer take(const AskedAction& asked);
    // False: it is not saved, and that is said.
    bool save(Answer& answer);
    bool save_worked_out(Answer& answer);
    bool take_up_file(Answer& answer);
    Locale locale() const;
    void keep_memory(Answer& answer);
    std::string read_shop_again();
    // The shop's file with what is made of it, as it is then; why it could not be written.
    std::string change_shop(const std::function<Json(const Json& shop)>& change);
    Watch watch();
    bool has_enough() const { return enough_ && taken_ <= *enough_; }

    KeptJob kept_;            // touched aside only
    Memory in_shop_;          // what the shop's file holds of the session's memory; aside only
    std::string last_wrong_;  // why the file could not be taken up, when it was looked at last; aside only
    std::function<void()> wake_;
    Watch other_;
    mutable std::mutex mutex_;
    std::vector<AskedAction> asked_;
    std::vector<Answer> answers_;
    std::optional<SearchNews> news_;
    // Actions by number: asked for so far, taken so far, and up to which one the search is not to go on.
    std::size_t asked_for_ = 0, taken_ = 0;
    std::optional<std::size_t> enough_;
    Aside aside_;  // last: ends before the rest goes
};

}  // namespace kw::window
