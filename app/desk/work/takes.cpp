#include "desk/work/takes.h"

#include "base/error.h"
#include "script/voices.h"

#include <utility>

namespace luft::desk {

void Takes::begin(project::ScriptItemId item) {
    drop();
    item_ = item;
    now_.emplace(script::voice_file(folder_, item));
}

void Takes::add(std::span<const float> samples) {
    if (!now_ || samples.empty()) return;
    try {
        now_->add(samples);
    } catch (...) {
        drop();
        throw;
    }
}

std::optional<Seconds> Takes::end() {
    if (!now_ || now_->length() < kShortest) {
        drop();
        return std::nullopt;
    }
    const Seconds length = now_->length();
    ended_.erase(item_);
    ended_.emplace(item_, std::move(*now_));
    now_.reset();
    return length;
}

void Takes::drop() {
    now_.reset();
}

void Takes::keep() {
    drop();
    std::optional<Error> first;
    for (auto& [item, take] : ended_) {
        try {
            take.keep();
        } catch (const Error& error) {
            if (!first) first = error;
        }
    }
    ended_.clear();
    if (first) throw *first;
}

} // namespace luft::desk
