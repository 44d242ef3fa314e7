// What every fuzz target is made of: libFuzzer's entry (llvm.org/docs/LibFuzzer.html), and something that
// must hold.
#pragma once

#include <cstddef>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <string_view>

/// Handles one input: any bytes. Must come back, without leaving anything behind.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size);

namespace luft::fuzz {

inline std::string_view text_of(const std::uint8_t* data, std::size_t size) {
    return {reinterpret_cast<const char*>(data), size};
}

/// Ends the program as a fault, which is what the fuzzer looks for.
inline void demand(bool fine, const char* what) {
    if (fine) return;
    std::fprintf(stderr, "doesn't hold: %s\n", what);
    std::abort();
}

} // namespace luft::fuzz
