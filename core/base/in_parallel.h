// Several pieces of work at once, each whole in a thread of its own; what comes out is the same whatever
// their number.
#pragma once

#include "base/progress.h"

#include <cstddef>
#include <exception>
#include <functional>
#include <string_view>

namespace luft {

/// As many pieces of work as this machine does at once; at least 1.
int cores();

/// Calls `work(i, progress)` for i from 0 to `count` - 1, in their order, on up to `jobs` threads (at least
/// 1), and `take(i, fault)` for each in the caller's thread, in their order too; `fault` is what the work
/// threw, null when it went well. Work doesn't begin until all but 2 x `jobs` before it have been taken, so
/// that what waits to be taken is bounded. `doing` is reported while they work.
///
/// Throws Stopped when `progress` is told to stop, and what `take` throws; then the works are told to stop as
/// well and have ended when this throws.
void in_parallel(std::size_t count, int jobs, const Progress& progress, std::string_view doing,
                 const std::function<void(std::size_t, const Progress&)>& work,
                 const std::function<void(std::size_t, const std::exception_ptr&)>& take);

} // namespace luft
