# Flags of our own code. What others wrote is compiled without our warnings, and not sanitized (Dear ImGui under
# AddressSanitizer takes minutes to build).
add_library(kw_flags INTERFACE)
target_compile_options(kw_flags INTERFACE
  -Wall -Wextra -Wpedantic -Wconversion -Wshadow
  $<$<CXX_COMPILER_ID:GNU>:-Wno-maybe-uninitialized>  # it takes what a variant does not hold for something that is read
  $<$<BOOL:${KW_WERROR}>:-Werror>
  -ffp-contract=off  # the same answer on every machine: no fused multiply-add where the machine has one
  -ffunction-sections -fdata-sections)
target_link_options(kw_flags INTERFACE -Wl,--gc-sections)
if(KW_SANITIZE)
  target_compile_options(kw_flags INTERFACE -fsanitize=address,undefined -fno-sanitize-recover=all -fno-omit-frame-pointer)
  target_link_options(kw_flags INTERFACE -fsanitize=address,undefined)
endif()
