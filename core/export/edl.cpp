#include "export/edl.h"

#include "export/cue_time.h"
#include "export/edit.h"
#include "script/others.h"
#include "script/title.h"

#include <array>
#include <cstdio>
#include <map>
#include <set>

namespace luft::exports {
namespace {

constexpr std::size_t kReelLength = 8; ///< characters of a reel's name

/// The performance's label as a reel: capitals and digits; never one of the names with a meaning.
std::string reel_of(const project::Performance& performance) {
    std::string reel;
    for (const char c : performance.label) {
        const bool lower = c >= 'a' && c <= 'z';
        if (lower || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9'))
            reel += lower ? static_cast<char>(c - 'a' + 'A') : c;
        if (reel.size() == kReelLength) break;
    }
    const bool taken = reel == "BL" || reel == "AX"; // black, and no reel at all
    return reel.empty() ? "REEL" : taken ? reel + "1" : reel;
}

/// Reels by performance, no two of one name: a later one gets a number at its end.
std::map<project::PerformanceId, std::string> reels_of(const script::Source& source) {
    std::map<project::PerformanceId, std::string> reels;
    std::set<std::string> taken;
    const auto add = [&](const project::Performance& performance) {
        const std::string plain = reel_of(performance);
        std::string reel = plain;
        for (int i = 2; !taken.insert(reel).second; ++i) {
            const std::string number = std::to_string(i);
            reel = plain.substr(0, kReelLength - number.size()) + number;
        }
        reels.emplace(performance.id, reel);
    };
    add(source.performance);
    for (const script::Other& other : source.others)
        add(other.performance);
    return reels;
}

class List {
  public:
    List(const script::Source& source, const script::CueSheet& sheet)
        : source_(source), sheet_(sheet), edit_(source, sheet), reels_(reels_of(source)) {
        out_ = "TITLE: " + one_text_line(source.piece.title.empty() ? "Untitled" : source.piece.title) +
               "\nFCM: " + (sheet.drop_frame ? "DROP FRAME" : "NON-DROP FRAME") + "\n\n";
    }

    std::string run() {
        for (const auto& segment : sheet_.segments) {
            const Cut cut = edit_.cut(segment);
            segment.kind == script::SegmentKind::talk ? halt(cut) : play(cut);
        }
        return std::move(out_);
    }

  private:
    [[nodiscard]] std::string time(std::int64_t frame) const {
        return script::timecode(frame, sheet_.frame_rate, sheet_.drop_frame);
    }

    void event(const std::string& reel, const char* track, std::int64_t source_in, std::int64_t source_out,
               const Cut& cut) {
        std::array<char, 64> head{};
        std::snprintf(head.data(), head.size(), "%03d  %-8s %-5s C        ", ++number_, reel.c_str(), track);
        out_ += head.data() + time(source_in) + " " + time(source_out) + " " + time(cut.record_in) + " " +
                time(cut.record_out) + "\n";
    }

    [[nodiscard]] const std::string& reel(const Cut& cut) const {
        return reels_.at(script::performance_of(source_, *cut.segment).id);
    }

    void speed(const std::string& reel, Rational speed, std::int64_t at) {
        // Timecode counts whole rates, and so does a speed in frames a second.
        const double frames = speed.as_double() * static_cast<double>(sheet_.frame_rate.round());
        std::array<char, 64> line{};
        std::snprintf(line.data(), line.size(), "M2   %-8s       %05.1f                ", reel.c_str(),
                      frames);
        out_ += line.data() + time(at) + "\n";
    }

    void clip(const Cut& cut) {
        out_ +=
            "* FROM CLIP NAME: " + one_text_line(clip_name(script::performance_of(source_, *cut.segment))) +
            "\n";
    }

    void play(const Cut& cut) {
        const bool picture = edit_.has_picture(*cut.segment);
        event(reel(cut), picture ? "AA/V" : "AA", cut.source_in, cut.source_out, cut);
        if (cut.segment->speed != Rational(1)) speed(reel(cut), cut.segment->speed, cut.source_in);
        clip(cut);
        if (cut.segment->kind != script::SegmentKind::play) note(cut.segment->title);
        locate(cut);
        if (!picture && edit_.has_picture()) event("BL", "V", 0, cut.length(), cut);
    }

    void halt(const Cut& cut) {
        const bool picture = edit_.has_picture(*cut.segment);
        if (picture) {
            event(reel(cut), "V", cut.source_in, cut.source_in + 1, cut);
            speed(reel(cut), 0, cut.source_in);
            clip(cut);
            note(cut.segment->title);
            locate(cut);
        }
        event("BL", picture || !edit_.has_picture() ? "AA" : "AA/V", 0, cut.length(), cut);
        if (picture) return;
        note(cut.segment->title);
        locate(cut);
    }

    void note(const std::string& words) { out_ += "* COMMENT: " + one_text_line(words) + "\n"; }

    /// Stops and asides that begin in this cut.
    void locate(const Cut& cut) {
        for (const Place& place : edit_.places())
            if (place.from >= cut.record_in && place.from < cut.record_out)
                out_ += "* LOC: " + time(place.from) + (place.aside ? " YELLOW  " : " RED     ") +
                        one_text_line(place.title) + "\n";
    }

    const script::Source& source_;
    const script::CueSheet& sheet_;
    Edit edit_;
    std::map<project::PerformanceId, std::string> reels_;
    int number_ = 0;
    std::string out_;
};

} // namespace

std::string edl(const script::Source& source, const script::CueSheet& sheet) {
    return List(source, sheet).run();
}

} // namespace luft::exports
