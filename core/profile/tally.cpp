#include "profile/tally.h"

#include "base/text.h"
#include "profile/words.h"

#include <algorithm>

namespace luft::profile {
namespace {

constexpr const char* kTagAxis = "tagged by the coach";

/// Tags count when they are the coach's own, or when the coach has kept the proposal.
bool counts(const project::Moment& moment) {
    return moment.state == project::MarkState::kept;
}

} // namespace

void Tally::open(const std::string& axis, ShareBy by, const std::string& one, const std::string& many,
                 int count, Seconds time, const std::vector<std::string>& shades) {
    axes_.push_back({axis, one, many, by, count, time});
    for (const auto& shade : shades)
        entry(axis, shade);
}

Tally::Entry& Tally::entry(const std::string& axis, const std::string& shade) {
    const auto found =
        std::ranges::find_if(entries_, [&](const Entry& e) { return e.axis == axis && e.shade == shade; });
    if (found != entries_.end()) return *found;
    return entries_.emplace_back(Entry{axis, shade, {}});
}

const Tally::Entry* Tally::find(const std::string& shade) const {
    const auto found = std::ranges::find(entries_, shade, &Entry::shade);
    return found == entries_.end() ? nullptr : &*found;
}

void Tally::add(const std::string& axis, const std::string& shade, Hit hit) {
    entry(axis, shade).hits.push_back(std::move(hit));
}

void Tally::add(const std::string& axis, const std::string& shade, const SungNote& note, double clarity,
                std::string words) {
    add(axis, shade, Hit{note.span(), note.third, note.quarter, clarity, std::move(words)});
}

void Tally::add(const std::string& axis, const std::string& shade, Span span, double clarity,
                std::string words) {
    add(axis, shade,
        Hit{span, material_->third_at(span), material_->quarter_of(span.middle()), clarity,
            std::move(words)});
}

void Tally::add_tags() {
    for (const auto& moment : material_->source.moments) {
        if (!counts(moment)) continue;
        for (const auto& tag : moment.shades) {
            if (tag.facet != facet_ || tag.shade.empty()) continue;
            const auto* known = find(tag.shade);
            const std::string axis = known ? known->axis : kTagAxis;
            auto& hits = entry(axis, tag.shade).hits;
            bool confirms = false;
            for (auto& hit : hits)
                if (!hit.tagged && (hit.span.overlaps(moment.span) || moment.span.contains(hit.span.start)))
                    hit.confirmed = confirms = true;
            if (confirms) continue;
            add(axis, tag.shade, moment.span, 1,
                moment.remark.empty() ? "tagged by the coach" : moment.remark);
            entry(axis, tag.shade).hits.back().tagged = true;
        }
    }
}

int Tally::count(const std::string& shade) const {
    const auto* found = find(shade);
    return found ? static_cast<int>(found->hits.size()) : 0;
}

std::vector<Span> Tally::spans(const std::string& shade) const {
    std::vector<Span> out;
    if (const auto* found = find(shade))
        for (const auto& hit : found->hits)
            out.push_back(hit.span);
    return out;
}

std::optional<Example> Tally::best(const std::string& shade) const {
    const auto* found = find(shade);
    if (!found || found->hits.empty()) return std::nullopt;
    // What the coach has put a finger on is the better example.
    const auto best = std::ranges::max_element(found->hits, [](const Hit& a, const Hit& b) {
        const bool at = a.tagged || a.confirmed, bt = b.tagged || b.confirmed;
        return at != bt ? bt : a.clarity < b.clarity;
    });
    return Example{best->span, best->words};
}

std::optional<int> Tally::gathered_in(const std::string& shade, double share) const {
    const auto* found = find(shade);
    if (!found || found->hits.size() < 4 || !material_->range || !material_->range->divided)
        return std::nullopt;
    std::array<int, 3> by{};
    for (const auto& hit : found->hits)
        ++by[static_cast<std::size_t>(hit.third)];
    const auto most = std::ranges::max_element(by);
    if (*most < share * static_cast<double>(found->hits.size())) return std::nullopt;
    return static_cast<int>(most - by.begin());
}

std::string Tally::Whole::of() const {
    return by_time() ? "of " + length_text(axis.time) + " " + axis.many
                     : "of " + counted(axis.count, axis.one, axis.many);
}

std::vector<Tally::Whole> Tally::wholes() const {
    std::vector<Whole> out;
    for (const auto& axis : axes_)
        out.push_back({axis, axis.count > 0});
    out.push_back({{kTagAxis, "tagged place", "tagged places", ShareBy::count, 0, Seconds(0)}, false});
    for (auto& [axis, more_than_tags] : out)
        for (const auto& e : entries_)
            for (const auto& hit : e.hits)
                if (e.axis == axis.name && hit.tagged) ++axis.count, axis.time += hit.span.length();
    return out;
}

ShadeShare Tally::share_of(const Entry& entry, const Whole& whole) const {
    ShadeShare out;
    out.tag = {facet_, entry.shade};
    const auto* shade = material_->source.vocabulary.shade(out.tag);
    out.name = shade ? shade->name : entry.shade;
    out.axis = whole.axis.name;
    out.count = static_cast<int>(entry.hits.size());
    for (const auto& hit : entry.hits) {
        out.time += hit.span.length();
        ++out.by_range[static_cast<std::size_t>(hit.third)];
        ++out.by_quarter[static_cast<std::size_t>(hit.quarter)];
        if (hit.tagged || hit.confirmed) ++out.by_coach;
    }
    out.out_of = whole.out_of();
    out.of = whole.of();
    if (whole.by_time())
        out.share = std::min(out.time / whole.axis.time, 1.0);
    else if (whole.axis.count > 0)
        out.share = std::min(static_cast<double>(out.count) / whole.axis.count, 1.0);
    out.best = best(entry.shade);
    return out;
}

std::vector<ShadeShare> Tally::shares() const {
    std::vector<ShadeShare> out;
    for (const auto& whole : wholes()) {
        std::vector<ShadeShare> here;
        for (const auto& e : entries_)
            if (e.axis == whole.axis.name && !e.hits.empty()) here.push_back(share_of(e, whole));
        std::ranges::stable_sort(here, [](const ShadeShare& a, const ShadeShare& b) {
            return a.share != b.share ? a.share > b.share : a.count > b.count;
        });
        out.insert(out.end(), here.begin(), here.end());
    }
    return out;
}

std::vector<ShadeAxis> Tally::axes() const {
    std::vector<ShadeAxis> out;
    for (const auto& whole : wholes())
        if (whole.axis.count > 0) out.push_back({whole.axis.name, whole.of(), whole.out_of()});
    return out;
}

} // namespace luft::profile
