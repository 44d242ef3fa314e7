#include "desk/work/takes.h"

#include "base/error.h"
#include "script/voices.h"

#include <algorithm>
#include <exception>
#include <utility>

namespace luft::desk {

void Takes::begin(project::ScriptItemId item) {
    drop();
    item_ = item;
    const auto ended = ended_.find(item);
    now_.emplace(script::voice_file(folder_, item), ended != ended_.end() && !ended->second.second());
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

bool Takes::is_of(const std::pair<const project::ScriptItemId, Take>& ended, const Lengths& measured) {
    const auto found = measured.find(ended.first);
    return found != measured.end() && found->second == ended.second.length();
}

std::size_t Takes::count(const Lengths& measured) const {
    return static_cast<std::size_t>(
        std::ranges::count_if(ended_, [&](const auto& ended) { return is_of(ended, measured); }));
}

void Takes::keep(const Lengths& measured) {
    drop();
    std::exception_ptr first;
    for (auto ended = ended_.begin(); ended != ended_.end();) {
        bool done = true;
        try {
            if (is_of(*ended, measured)) ended->second.keep();
        } catch (const Error&) {
            if (!first) first = std::current_exception();
            done = false;
        }
        ended = done ? ended_.erase(ended) : std::next(ended);
    }
    if (first) std::rethrow_exception(first);
}

} // namespace luft::desk
