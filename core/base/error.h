// What goes wrong, as a value with a cause and a remedy. Thrown, so that no caller can overlook it.
#pragma once

#include <stdexcept>
#include <string>

namespace luft {

/// What kind of failure it is, so that a caller can choose what to do without reading the words.
enum class Fault {
    not_found,    ///< file, mark, moment, facet … of that name doesn't exist
    unreadable,   ///< exists, but can't be read: broken, empty, not of the kind
    unsupported,  ///< sound in itself, but nothing here can handle it
    changed,      ///< media no longer matches its fingerprint
    newer,        ///< written by a newer version of the program
    busy,         ///< another program holds it
    cannot_write, ///< no permission, disk full, read-only
    bad_request,  ///< the caller asked for something that makes no sense
    internal,     ///< a bug of ours
};

/// One failure: `what()` says in one line what happened, `advice()` what to do (may be empty). Both are
/// sentences for a person, without a final line end.
class Error : public std::runtime_error {
  public:
    Error(Fault fault, const std::string& what, std::string advice = {})
        : std::runtime_error(what), fault_(fault), advice_(std::move(advice)) {}

    [[nodiscard]] Fault fault() const { return fault_; }
    [[nodiscard]] const std::string& advice() const { return advice_; }

  private:
    Fault fault_;
    std::string advice_;
};

/// Thrown by long work that was told to stop. Not an Error: nothing went wrong.
class Stopped : public std::exception {
  public:
    [[nodiscard]] const char* what() const noexcept override { return "stopped"; }
};

} // namespace luft
