// What the file of a verb needs: what it takes, and the frame that it runs in.
#pragma once

#include "cli/frame.h"
#include "cli/options.h"
#include "cli/typed.h"

#include <memory>

namespace luft::cli {

/// Lets a verb do `work(options, frame)`. `options` outlives the reading of the command line.
template <class Options>
void on_run(Verb& verb, Frame& frame, std::shared_ptr<Options> options,
            void (*work)(const Options&, Frame&)) {
    on_named(verb,
             [&frame, options, work] { frame.choose([&frame, options, work] { work(*options, frame); }); });
}

} // namespace luft::cli
