#include "media/formats.h"

#include <algorithm>
#include <array>
#include <string_view>

namespace luft::media {
namespace {

using namespace std::literals;

// Names as `ffmpeg -demuxers` lists them, also of demuxers that only some builds have.
constexpr std::array kNamesOthers{"applehttp"sv,
                                  "avisynth"sv,
                                  "concat"sv,
                                  "dash"sv,
                                  "hls"sv,
                                  "imf"sv,
                                  "lavfi"sv,
                                  "live_flv"sv,
                                  "rtp"sv,
                                  "rtsp"sv,
                                  "sap"sv,
                                  "sbg"sv,
                                  "sdp"sv,
                                  "vapoursynth"sv,
                                  "vobsub"sv,
                                  "ipmovie"sv,
                                  "mpegtsraw"sv,
                                  "ty"sv,
                                  "webm_dash_manifest"sv};
constexpr std::array kScores{"libgme"sv, "libmodplug"sv, "libopenmpt"sv};
constexpr std::array kCaptions{"aqtitle"sv,     "ass"sv,     "dvbsub"sv,    "dvbtxt"sv,     "ffmetadata"sv,
                               "jacosub"sv,     "lrc"sv,     "mcc"sv,       "microdvd"sv,   "mpl2"sv,
                               "mpsub"sv,       "pjs"sv,     "realtext"sv,  "sami"sv,       "scc"sv,
                               "srt"sv,         "stl"sv,     "subviewer"sv, "subviewer1"sv, "sup"sv,
                               "tedcaptions"sv, "vplayer"sv, "webvtt"sv,    "data"sv,       "rcwt"sv};
constexpr std::array kTextAsPictures{"adf"sv, "bin"sv, "idf"sv, "tty"sv, "xbin"sv};
constexpr std::array kStills{"image2"sv, "image2pipe"sv, "alias_pix"sv, "brender_pix"sv, "fits"sv, "ico"sv};
constexpr std::array kRaw{
    "alaw"sv,  "aptx"sv,  "aptx_hd"sv, "bit"sv,      "bitpacked"sv, "codec2raw"sv, "dfpwm"sv,  "f32be"sv,
    "f32le"sv, "f64be"sv, "f64le"sv,   "g722"sv,     "g723_1"sv,    "g726"sv,      "g726le"sv, "g729"sv,
    "gsm"sv,   "loas"sv,  "mulaw"sv,   "rawvideo"sv, "s16be"sv,     "s16le"sv,     "s24be"sv,  "s24le"sv,
    "s32be"sv, "s32le"sv, "s8"sv,      "sbc"sv,      "sln"sv,       "u16be"sv,     "u16le"sv,  "u24be"sv,
    "u24le"sv, "u32be"sv, "u32le"sv,   "u8"sv,       "v210"sv,      "v210x"sv,     "vidc"sv};

template <std::size_t N>
bool among(const std::array<std::string_view, N>& names, std::string_view name) {
    return std::find(names.begin(), names.end(), name) != names.end();
}

} // namespace

std::string why_refused(const AVInputFormat& format) {
    // A demuxer with several names ("mov,mp4,m4a,…") is none of those below.
    const std::string_view name = format.name;
    const std::string title = format.long_name != nullptr ? format.long_name : format.name;
    if (among(kStills, name) || name.ends_with("_pipe")) return "a still picture, not sound or video";
    if (among(kNamesOthers, name) || (format.flags & AVFMT_NOFILE) != 0)
        return "no recording but a list or script (" + title + ") that names others, which is never followed";
    if (among(kCaptions, name) || among(kTextAsPictures, name))
        return "text (" + title + "), not sound or video";
    if (among(kScores, name)) return "a score for a synthesizer (" + title + "), not a recording";
    if (among(kRaw, name)) return "not a media file that can be recognised by what is in it";
    return {};
}

std::string allowed_formats() {
    std::string names;
    void* walk = nullptr;
    while (const AVInputFormat* format = av_demuxer_iterate(&walk))
        if (why_refused(*format).empty()) names.append(names.empty() ? "" : ",").append(format->name);
    return names;
}

} // namespace luft::media
