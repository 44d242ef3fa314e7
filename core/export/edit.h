// The programme as an editor cuts it: whole frames of recording and programme, for every format of an edit.
#pragma once

#include "script/cue_sheet.h"

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace luft::exports {

/// One segment in frames of the programme's rate; out points are exclusive. Of a talk `source_in` is the
/// frame that stands, and `source_out` the one after it.
struct Cut {
    const script::Segment* segment = nullptr;
    std::int64_t record_in = 0, record_out = 0;
    std::int64_t source_in = 0, source_out = 0;

    [[nodiscard]] std::int64_t length() const { return record_out - record_in; }
};

/// Something to find in the programme: a stop, or an aside.
struct Place {
    std::int64_t from = 0, to = 0; ///< frames of the programme
    bool aside = false;
    std::string title; ///< "Stop 2: breathy onset"; of an aside its words, shortened
    std::string text;  ///< all its words
};

class Edit {
  public:
    /// Both must outlive it.
    Edit(const script::Source& source, const script::CueSheet& sheet);

    /// Where playback has run to the recording's end, its last frame is what stands.
    [[nodiscard]] Cut cut(const script::Segment& segment) const;
    /// Whether a segment's recording has a picture, and whether any of the programme's recordings has.
    [[nodiscard]] bool has_picture(const script::Segment& segment) const;
    [[nodiscard]] bool has_picture() const { return has_picture_; }
    /// Stops and asides in order.
    [[nodiscard]] const std::vector<Place>& places() const { return places_; }
    /// Whole frames of the script's own recording; at least 1.
    [[nodiscard]] std::int64_t media_frames() const { return media_frames_; }
    [[nodiscard]] std::int64_t frame(Rational time) const { return (time * rate_).round(); }

  private:
    const script::Source* source_;
    Rational rate_;
    bool has_picture_ = false;
    std::int64_t media_frames_ = 1;
    std::vector<Place> places_;
};

/// The recording's file name, without its folders; the performance's label when it has none.
std::string clip_name(const project::Performance& performance);

/// A text on one line for every reader, as script::one_line has it.
std::string one_text_line(const std::string& text, std::size_t most = 200);

} // namespace luft::exports
