// The recorded talks of one rehearsal, until the coach decides whether they are kept.
#pragma once

#include "desk/work/take.h"
#include "project/model.h"

#include <map>
#include <optional>

namespace luft::desk {

/// Nothing of it is seen in the folder of the former recordings until `keep`; what isn't kept is gone with
/// it.
class Takes {
  public:
    /// A shorter one is a slip of the key. Common practice, no source.
    static constexpr Seconds kShortest{0.5};

    explicit Takes(std::filesystem::path folder) : folder_(std::move(folder)) {}

    /// A talk begins; one that hasn't ended is dropped. Throws as Take, and then nothing is recorded.
    void begin(project::ScriptItemId item);
    [[nodiscard]] bool recording() const { return now_.has_value(); }
    /// Does nothing while no talk is recorded. Throws as Take, and then this talk isn't recorded any more.
    void add(std::span<const float> samples);
    /// The talk has ended; its length. None, and the talk's former take stays, when it wasn't recorded or is
    /// shorter than `kShortest`.
    std::optional<Seconds> end();
    /// The talk isn't to be kept.
    void drop();

    using Lengths = std::map<project::ScriptItemId, Seconds>;
    /// How many takes `keep` would keep.
    [[nodiscard]] std::size_t count(const Lengths& measured) const;
    /// Puts every ended take whose length is the measured one in its place; another length means that the
    /// talk was spoken once more without being recorded, and the take is dropped. Throws the first Error
    /// after having tried all; those that couldn't be put in place can be tried again.
    void keep(const Lengths& measured);

  private:
    [[nodiscard]] static bool is_of(const std::pair<const project::ScriptItemId, Take>& ended,
                                    const Lengths& measured);

    std::filesystem::path folder_;
    std::map<project::ScriptItemId, Take> ended_;
    std::optional<Take> now_;
    project::ScriptItemId item_;
};

} // namespace luft::desk
