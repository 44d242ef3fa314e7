#include "media/layout.h"

#include "base/text.h"
#include "media/media.h"

namespace luft::media {

Layout known_layout(const AVChannelLayout& layout, const std::string& name) {
    if (layout.nb_channels < 1)
        throw Error(Fault::unreadable, "'" + name + "' announces sound without a channel.");
    if (layout.nb_channels > kMostChannels)
        throw Error(Fault::unsupported, "'" + name + "' has " + std::to_string(layout.nb_channels) +
                                            " sound channels; more than 64 can't be handled.");
    return layout.order == AV_CHANNEL_ORDER_UNSPEC ? Layout(layout.nb_channels) : Layout(layout);
}

SampleRate known_rate(int rate, const std::string& name) {
    if (rate < 1 || rate > kMostRate)
        throw Error(Fault::unreadable, "'" + name + "' announces " + std::to_string(rate) +
                                           " samples a second, which makes no sense.");
    if (rate < kLeastRate)
        throw Error(Fault::unreadable, "'" + name + "' announces " + std::to_string(rate) +
                                           " samples a second, too few for a voice.");
    return {rate};
}

Error too_long(const std::string& name) {
    return {Fault::unsupported,
            "'" + name + "' is longer than " + fixed(kMostLength.value() / 3600, 0) +
                " hours, more than can be listened to at once.",
            "Cut it into parts first."};
}

std::vector<ChannelRole> roles(const Layout& layout) {
    const AVChannelLayout& l = layout.get();
    const bool side = av_channel_layout_index_from_channel(&l, AV_CHAN_SIDE_LEFT) >= 0;
    std::vector<ChannelRole> roles;
    for (int i = 0; i < layout.channels(); ++i) {
        switch (av_channel_layout_channel_from_index(&l, static_cast<unsigned>(i))) {
        case AV_CHAN_FRONT_LEFT:
            roles.push_back(ChannelRole::left);
            break;
        case AV_CHAN_FRONT_RIGHT:
            roles.push_back(ChannelRole::right);
            break;
        case AV_CHAN_FRONT_CENTER:
            roles.push_back(ChannelRole::centre);
            break;
        case AV_CHAN_LOW_FREQUENCY:
            roles.push_back(ChannelRole::low_frequency);
            break;
        case AV_CHAN_SIDE_LEFT:
            roles.push_back(ChannelRole::surround_left);
            break;
        case AV_CHAN_SIDE_RIGHT:
            roles.push_back(ChannelRole::surround_right);
            break;
        // In 5.1 the surround pair is called back or side, as the format likes; in 7.1 it is the side one.
        case AV_CHAN_BACK_LEFT:
            roles.push_back(side ? ChannelRole::other : ChannelRole::surround_left);
            break;
        case AV_CHAN_BACK_RIGHT:
            roles.push_back(side ? ChannelRole::other : ChannelRole::surround_right);
            break;
        default:
            roles.push_back(ChannelRole::other);
            break;
        }
    }
    return roles;
}

} // namespace luft::media
