#include "project/detail_values.h"

#include <nlohmann/json.hpp>

namespace luft::project {

/// Takes what the parser comes by. Its names are those that the parser calls.
class DetailValues::Sink {
  public:
    explicit Sink(DetailValues& to) : to_(to) {}

    bool null() { return take(nullptr); }
    bool boolean(bool value) { return take(value); }
    bool number_integer(std::int64_t value) { return take(static_cast<double>(value)); }
    bool number_unsigned(std::uint64_t value) { return take(static_cast<double>(value)); }
    bool number_float(double value, const std::string& /*as written*/) { return take(value); }
    bool string(std::string& value) { return take(std::move(value)); }
    static bool binary(std::vector<std::uint8_t>& /*none in JSON*/) { return false; }

    bool start_object(std::size_t /*unknown*/) {
        if (depth_ == 1) {
            take(Group());
            group_ = key_;
        } else if (depth_ > 1 || lists_ > 0) {
            take(Other());
        }
        ++depth_;
        return true;
    }
    bool end_object() {
        if (--depth_ == 1) group_.clear();
        return true;
    }
    bool start_array(std::size_t /*unknown*/) {
        take(Other());
        ++lists_;
        return depth_ > 0;
    }
    bool end_array() {
        --lists_;
        return true;
    }
    bool key(std::string& name) {
        if (lists_ == 0 && depth_ <= 2) key_ = name;
        return true;
    }
    static bool parse_error(std::size_t /*at*/, const std::string& /*token*/,
                            const nlohmann::json::exception& /*why*/) {
        return false;
    }

  private:
    template <class Kind>
    bool take(Kind&& value) {
        if (depth_ == 0) return false; // not an object
        if (depth_ > 2 || lists_ > 0) return true;
        if (to_.count_ == to_.entries_.size()) to_.entries_.emplace_back();
        Entry& entry = to_.entries_[to_.count_++];
        entry.group = group_;
        entry.key = key_;
        entry.value = std::forward<Kind>(value);
        return true;
    }

    DetailValues& to_;
    std::string group_, key_;
    int depth_ = 0, lists_ = 0;
};

void DetailValues::read(const std::string& json) {
    count_ = 0;
    Sink sink(*this);
    if (!nlohmann::json::sax_parse(json, &sink)) throw Missing();
}

const DetailValues::Value* DetailValues::find(std::string_view group, std::string_view key) const {
    // From the end: of two of one name the later one counts.
    for (std::size_t i = count_; i-- > 0;)
        if (entries_[i].key == key && entries_[i].group == group) return &entries_[i].value;
    return nullptr;
}

const DetailValues::Value& DetailValues::at(std::string_view group, std::string_view key) const {
    const Value* value = find(group, key);
    if (!value) throw Missing();
    return *value;
}

template <class Kind>
const Kind& DetailValues::get(std::string_view group, std::string_view key) const {
    const auto* value = std::get_if<Kind>(&at(group, key));
    if (!value) throw Missing();
    return *value;
}

bool DetailValues::is_null(std::string_view group, std::string_view key) const {
    return std::holds_alternative<std::nullptr_t>(at(group, key));
}

bool DetailValues::lacks(std::string_view group, std::string_view key) const {
    const Value* value = find(group, key);
    return !value || std::holds_alternative<std::nullptr_t>(*value);
}

double DetailValues::number(std::string_view group, std::string_view key) const {
    return get<double>(group, key);
}

bool DetailValues::truth(std::string_view group, std::string_view key) const {
    return get<bool>(group, key);
}

const std::string& DetailValues::text(std::string_view group, std::string_view key) const {
    return get<std::string>(group, key);
}

bool DetailValues::has_group(std::string_view name) const {
    if (is_null("", name)) return false;
    (void)get<Group>("", name);
    return true;
}

} // namespace luft::project
