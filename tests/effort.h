#pragma once
// How many random cases a test goes through. Sanitizers make each some ten times as slow, and look for what a tenth of them
// would show as well; that the answers are right is shown without them.

namespace kw::tests {

#if defined(__SANITIZE_ADDRESS__)
inline constexpr bool is_sanitized = true;
#elif defined(__has_feature)
#if __has_feature(address_sanitizer)
inline constexpr bool is_sanitized = true;
#else
inline constexpr bool is_sanitized = false;
#endif
#else
inline constexpr bool is_sanitized = false;
#endif

// At least one.
inline constexpr int cases(int count) { return is_sanitized ? (count + 9) / 10 : count; }

}  // namespace kw::tests
