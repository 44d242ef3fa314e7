// What is told of the work on two performances: that it is being done, or why it wasn't.
#include "desk/work/versions.h"

namespace luft::desk {

void Versions::not_done(const Job::Match& work, const std::string& why) {
    if (asked_ && asked_->two == Two(work.a.value, work.b.value)) asked_->why_not = why;
}

std::string Versions::why_not() const {
    return asked_ && asked_->two == two() ? asked_->why_not : std::string();
}

std::string Versions::lacking() const {
    if (result_) return {};
    if (!possible()) return "There is only one performance of this piece.";
    if (const auto why = why_not(); !why.empty())
        return "The two weren't compared. " + why + " F4 does it again.";
    return "The two are still being compared.";
}

std::string Versions::note() const {
    if (!result_) return {};
    const auto why = why_not();
    const std::string changed = !why.empty()
                                    ? "Changed since, and not compared anew. " + why + " F4 does it again."
                                : asked_ && asked_->two == two() ? "Changed since: being compared anew."
                                                                 : "";
    return changed + (changed.empty() || result_->note.empty() ? "" : " ") + result_->note;
}

} // namespace luft::desk
