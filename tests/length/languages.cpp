#include <doctest/doctest.h>

#include "length/message.h"
#include "length/text.h"

using namespace kw;

TEST_CASE("a length is told with the language's decimal mark, and is read back") {
    const Length length = Length::micrometres(12345);
    CHECK(show_with_unit(length, Graduation::mm_0_01) == "12.35 mm −");
    CHECK(show_with_unit(length, {Graduation::mm_0_1, Language::german}) == "12,3 mm +");
    for (const Language language : all_languages)
        for (const Graduation graduation : {Graduation::in_64, Graduation::in_001, Graduation::mm_0_1}) {
            std::string text = show_with_unit(Length::inches(3, 8), {graduation, language});
            text = text.substr(0, text.find(" −"));
            CAPTURE(text);
            const auto read = read_length(text, Unit::centimetre);
            REQUIRE(read);
            CHECK(abs(*read - Length::inches(3, 8)) <= Length::micrometres(50));
        }
}

TEST_CASE("a message is told in the language of who reads it") {
    const Message message = Message::say("list.test", Length::inches(1, 2));
    // A key that is in no table is shown as it is, so that nobody takes it for a sentence.
    CHECK(message.text(Graduation::in_64) == "list.test");
    const Message sum = Message::of("1", Message::say("list.and"), Message::of(Length::inches(1, 2)));
    CHECK(sum.text(Graduation::in_64) == "1 and 1/2 in");
    CHECK(sum.text({Graduation::mm_0_1, Language::german}) == "1 und 12,7 mm");
}

TEST_CASE("what is wrong with a length is said in the maker's language") {
    const Locale german(Graduation::mm_0_1, Language::german);
    CHECK(read_length("12 1/0", Unit::inch).error().message.text(german) ==
          "„12 1/0“: unter dem Bruchstrich steht null");
    CHECK(read_length("12 Ellen", Unit::inch).error().message.text(german) ==
          "„12 Ellen“: „Ellen“ ist hier keine Einheit: mm, cm, m, in (Zoll) oder ft (Fuß) schreiben");
    CHECK(read_length("", Unit::inch).error().message.text(german) == "ein Maß fehlt");
}

TEST_CASE("a name that files go by is shown as the language has it, and as it is where it has none") {
    CHECK(Message::name("list.", "or").text({Graduation::mm_0_1, Language::german}) == " oder ");
    CHECK(Message::name("list.", "or else").text(Graduation::in_64) == "or else");
}
