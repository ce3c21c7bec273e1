// What the check has to say: one finding per thing that is not as asked.
#pragma once

#include <string>
#include <vector>

namespace checker {

enum class Kind {
    form,     // the plan is not in the contract's form
    list,     // parts and boxes: which, how many, which size
    setup,    // one setup by itself
    order,    // the sequence of the setups
    measure,  // the drawer that the passes make
};

struct Finding {
    Kind kind = Kind::form;
    std::string about;  // a drawer's copy, a part or a setup
    std::string what;
};

struct Range {
    double low = 0;
    double high = 0;
};

class Report {
public:
    explicit Report(double tolerance_mm) : tolerance_mm_(tolerance_mm) {}

    void say(Kind kind, const std::string& about, const std::string& what);
    void same(Kind kind, const std::string& about, const std::string& what, double is_mm, double asked_mm);
    void within(Kind kind, const std::string& about, const std::string& what, double is_mm, Range asked_mm);

    bool equal(double one_mm, double other_mm) const;
    double tolerance_mm() const { return tolerance_mm_; }
    const std::vector<Finding>& findings() const { return findings_; }

private:
    double tolerance_mm_;
    std::vector<Finding> findings_;
};

std::string text_of(const Finding& finding);
std::string text_of(const std::vector<Finding>& findings);

}  // namespace checker
