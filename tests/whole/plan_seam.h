// Where the tests of whole jobs meet the program: one function for the plan, one for the program itself.
#pragma once

#include <string>
#include <vector>

namespace whole {

// The plan of a job as JSON text. Empty, with the program's message in `error`, where it refuses.
std::string plan_json(const std::string& job_text, std::string& error);

// The setup of a drawer's parts that does this work, as the plan of a job file numbers it.
std::string setup_of(const std::string& job_path, const std::string& work, const std::string& drawer);

struct Run {
    int status = 0;
    std::string out;
    std::string err;
};

// Where the programs that this process runs keep what they learn; and a shop that has learned nothing.
std::string data_folder();
void forget_everything();

Run run_program(const std::vector<std::string>& arguments);

// A file that is gone when the test is done with it.
class JobFile {
public:
    explicit JobFile(const std::string& text);
    ~JobFile();
    JobFile(const JobFile&) = delete;
    JobFile& operator=(const JobFile&) = delete;

    const std::string& path() const { return path_; }
    std::string text() const;

private:
    std::string path_;
};

}  // namespace whole
