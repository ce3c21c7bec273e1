#include <iostream>

#include "command/run.h"
#include "window/app.h"
#include "window/platform.h"

int main(int argc, char** argv) {
    const kw::CommandIo io{
        std::cout,
        std::cerr,
        [](const std::string& job, const std::string& shop) {
            return kw::window::run_app({job, shop});
        },
        [](const std::string& folder, const std::string& job) { return kw::window::run_shots(folder, job); },
        kw::window::own_shop_file().string(),
        [](const std::string& name) { return kw::window::platform::asset(name).string(); }};
    return kw::run_command({argv + 1, argv + argc}, io);
}
