#include "memory/preferences.h"

namespace kw {

Preferences changed_in(Preferences there, const Preferences& before, const Preferences& now) {
    const auto take = [&](auto Preferences::*field) {
        if (now.*field != before.*field) there.*field = now.*field;
    };
    take(&Preferences::language);
    take(&Preferences::reading);
    take(&Preferences::fence_to);
    take(&Preferences::fence_stands);
    take(&Preferences::works_with);
    take(&Preferences::is_dark);
    take(&Preferences::size_percent);
    take(&Preferences::sounds);
    return there;
}

}  // namespace kw
