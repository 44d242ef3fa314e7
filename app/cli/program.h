// The whole command line as its help and its manual page show it.
#pragma once

#include "cli/frame.h"
#include "cli/verb.h"

#include <memory>

namespace luft::cli {

/// `luftpause` with all verbs; they will run in `frame`, which must outlive it.
std::unique_ptr<CLI::App> program(Frame& frame);

} // namespace luft::cli
