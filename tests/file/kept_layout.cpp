// A job file that was written by hand stays as it was laid out, but for what has changed.
#include <doctest/doctest.h>

#include <random>

#include "file/document.h"
#include "file/kept_layout.h"
#include "sample_job.h"

using namespace kw;

namespace {

// Any JSON, laid out in any way.
class Scribe {
public:
    explicit Scribe(unsigned seed) : random_(seed) {}

    int below(int n) { return std::uniform_int_distribution<int>(0, n - 1)(random_); }

    Json value(int depth) {
        switch (below(depth > 0 ? 6 : 4)) {
            case 0: return below(100);
            case 1: return below(2) == 0;
            case 2: return "1/2\" \\ \u00e9" + std::to_string(below(50));
            case 3: return nullptr;
            case 4: return list(depth - 1);
            default: return object(depth - 1);
        }
    }
    Json object(int depth) {
        Json out = Json::object();
        for (int i = below(5); i > 0; --i) out["k\"" + std::to_string(below(9))] = value(depth);
        return out;
    }
    Json list(int depth) {
        Json out = Json::array();
        for (int i = below(5); i > 0; --i) out.push_back(value(depth));
        return out;
    }

    std::string blank() {
        constexpr const char* all[] = {"", "", " ", "\n", "\n    ", "\r\n\t", "  "};
        return all[below(7)];
    }
    std::string laid_out(const Json& json) {
        if (!json.is_structured()) return json.dump();
        std::string out(1, json.is_object() ? '{' : '[');
        bool is_first = true;
        for (const auto& [key, its] : json.items()) {
            out += (is_first ? "" : blank() + ",") + blank();
            if (json.is_object()) out += Json(key).dump() + blank() + ":" + blank();
            out += laid_out(its);
            is_first = false;
        }
        return out + blank() + (json.is_object() ? "}" : "]");
    }

    // Something in it is another, is gone, or is new.
    void change(Json& json) {
        if (!json.is_structured() || json.empty() || below(4) == 0) {
            if (json.is_array()) json.push_back(value(1));
            else if (json.is_object()) json["new " + std::to_string(below(9))] = value(1);
            else json = value(1);
            return;
        }
        const auto at = std::next(json.begin(), below(static_cast<int>(json.size())));
        if (below(4) == 0) json.erase(at);
        else change(*at);
    }

private:
    std::mt19937 random_;
};

}  // namespace

TEST_CASE("an entry of the log leaves every byte outside of the log as it was") {
    const std::string text = tests::file_text("seed_cabinet.json");
    Json job = tests::sample_json();
    REQUIRE(to_text(job) != text);
    const Json rip{{"kind", "ran"}, {"key", "rip"}, {"readings", Json{{"size", "4 1/4 in"}}}};
    job["log"].push_back(rip);
    const std::string told = text_with(text, job);
    const std::string entry =
        "{\n      \"kind\": \"ran\",\n      \"key\": \"rip\",\n      \"readings\": {\n"
        "        \"size\": \"4 1/4 in\"\n      }\n    }";
    const std::size_t log = text.find("\"log\": []");
    REQUIRE(log != std::string::npos);
    CHECK(told == text.substr(0, log) + "\"log\": [\n    " + entry + "\n  ]" + text.substr(log + 9));
    job["log"].push_back(rip);
    CHECK(text_with(told, job) == text.substr(0, log) + "\"log\": [\n    " + entry + ",\n    " + entry +
                                      "\n  ]" + text.substr(log + 9));
    // And taken back.
    CHECK(text_with(told, tests::sample_json()) == text);
}

TEST_CASE("a field that is changed, new or gone leaves those beside it as they are written") {
    const std::string text = "{ \"a\" : [1,  2],\r\n\r\n\t\"b\": { \"c\":0.10, \"d\": \"x\" }\r\n}\r\n\r\n";
    Json json = Json::parse(text);
    json["b"]["d"] = "y";
    CHECK(text_with(text, json) ==
          "{ \"a\" : [1,  2],\r\n\r\n\t\"b\": { \"c\":0.10, \"d\": \"y\" }\r\n}\r\n\r\n");
    json["b"]["e"] = Json{{"f", 1}};
    CHECK(text_with(text, json).find("{ \"c\":0.10, \"d\": \"y\", \"e\": { \"f\": 1 } }\r\n}") !=
          std::string::npos);
    json["a"].erase(0);
    json["b"].erase("c");
    CHECK(text_with(text, json) ==
          "{ \"a\" : [2],\r\n\r\n\t\"b\": { \"d\": \"y\", \"e\": { \"f\": 1 } }\r\n}\r\n\r\n");
    json["g"] = Json{{"h", 2}};
    CHECK(text_with(text, json).find("} },\r\n\r\n\t\"g\": { \"h\": 2 }\r\n}\r\n\r\n") != std::string::npos);
}

// The writer by itself: text_with() would write all anew where it is wrong.
TEST_CASE("whatever is changed, and however the file is laid out, it says then what it is to say") {
    int kept = 0;
    for (unsigned seed = 0; seed < 3000; ++seed) {
        Scribe scribe(seed);
        Json json = scribe.object(4);
        const std::string text = scribe.laid_out(json) + "\n";
        INFO(text);
        CHECK(text_with(text, json) == (to_text(json) == text ? to_text(json) : text));
        for (int i = scribe.below(3); i >= 0; --i) scribe.change(json);
        const auto after = in_its_layout(text, json);
        if (!after) continue;
        ++kept;
        INFO(*after);
        CHECK(Json::parse(*after) == json);  // and the fields in their sequence
        CHECK(text_with(text, json) == *after);
    }
    CHECK(kept > 2000);
}

TEST_CASE("an entry that takes another's place in the log keeps the sequence of its own fields") {
    const std::string text = "{ \"log\": [ { \"kind\": \"ran\", \"part\": \"a\", \"setup\": \"S1\" } ] }\n";
    Json json = Json::parse(text);
    json["log"][0] = Json{{"setup", "S2"}, {"time", "now"}, {"kind", "test"}, {"part", "b"}};
    CHECK(text_with(text, json) ==
          "{ \"log\": [ { \"setup\": \"S2\", \"time\": \"now\", \"kind\": \"test\", \"part\": \"b\" } ] }\n");
}

TEST_CASE("a new field whose name is no UTF-8 is written with the sign for that, as its value is") {
    const std::string text = "{ \"a\" : 1 }\n";
    Json json = Json::parse(text);
    json["b\xff"] = "c\xff";
    json["d"] = Json{{"e\xff", 1}};
    const auto after = in_its_layout(text, json);
    REQUIRE(after);
    CHECK(*after == "{ \"a\" : 1, \"b\ufffd\": \"c\ufffd\", \"d\": { \"e\ufffd\": 1 } }\n");
}

TEST_CASE("a file in the program's own layout stays in it, and so does one whose layout can't be kept") {
    Json job = tests::sample_json();
    const std::string own = to_text(job);
    job["name"] = "Bulbs";
    CHECK(text_with(own, job) == to_text(job));
    CHECK(text_with("", job) == to_text(job));
    CHECK(text_with("{ \"name\": \"Seeds\", ", job) == to_text(job));
    CHECK(text_with("{ \"name\": [1], \"name\": \"Seeds\" }", job) == to_text(job));
    CHECK(text_with("\xEF\xBB\xBF{ \"name\": \"Seeds\" }", job) == to_text(job));
}
