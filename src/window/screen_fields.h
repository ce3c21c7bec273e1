#pragma once
// Fields that stand for one place in the job file. What reads well becomes an action; what does not stays in the field,
// marked, with the reason beneath. What the job itself can't be made with is marked the same way.

#include <string>
#include <vector>

#include "window/screen.h"

namespace kw::window {

Unit unit_of_job(const Session& session);
// How what is wrong with a job is told, also while it can't be made.
Locale locale_of_job(const Session& session);
std::string unit_name(const Session& session);

// What the document says there: a text as it is, a number as digits; empty if there is nothing.
std::string text_at(const Session& session, const std::string& pointer);
bool has_at(const Session& session, const std::string& pointer);
// The `name` of each item of a list of the document.
std::vector<std::string> names_in(const Session& session, const std::string& list);

// What is written under a marked field; empty if it is not marked. What is wrong with the job itself is said in full at
// the head of the card.
std::string reason_at(const Screen& screen, const std::string& pointer);

struct FieldLook {
    float width = 0;
    std::string hint;
};

// Entries that are not taken, of the items of a list: where one of them goes, what stands behind it moves up.
void forget_drafts(UiState& state, const std::string& list);
void name_entry(Screen& screen, const std::string& label, const std::string& pointer,
                const FieldLook& look = {});
// An amount of money; it may be empty.
void price_entry(Screen& screen, const std::string& label, const std::string& pointer,
                 const FieldLook& look = {});
// Text that may be empty.
void note_entry(Screen& screen, const std::string& label, const std::string& pointer,
                const FieldLook& look = {});
void length_entry(Screen& screen, const std::string& label, const std::string& pointer,
                  const FieldLook& look = {});
// A length that the program chooses where the maker does not: with a way back to that.
void open_length_entry(Screen& screen, const std::string& label, const std::string& pointer,
                       const FieldLook& look);
void count_entry(Screen& screen, const std::string& label, const std::string& pointer, int least);

struct Choice {
    std::string shown;
    Json value;  // null: the field is left out
};
void choice_entry(Screen& screen, const std::string& label, const std::string& pointer,
                  const std::vector<Choice>& choices, const Json& when_left_out = nullptr);
std::vector<Choice> choices_of(const std::vector<std::string>& names);

// What is wrong there or beneath it, a notice each.
void say_problems(Screen& screen, const std::string& pointer);

// A card for a part of the job, with its own problems under its heading.
// Without a title: nothing but its fields.
void begin_field_card(Screen& screen, const std::string& title, const std::string& pointer, float width = 0);

// Reads what was entered outside of the job (a reading, a move). False: `draft.why` says what is wrong with it.
bool take_length(Screen& screen, Draft& draft, Length& length);
void draft_entry(Screen& screen, const std::string& label, Draft& draft, const FieldLook& look);

// So many fields side by side.
class Across {
public:
    Across(Screen& screen, int columns);
    // Moves on to the next field's place, and gives its width.
    float next();

private:
    Ui& ui_;
    int columns_;
    int index_ = 0;
    float width_;
    ImVec2 corner_;  // of the row: the toolkit forgets it where cards stand side by side
};

}  // namespace kw::window
