// The values of a mark's JSON without a tree of them: projects hold a hundred thousand marks.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace luft::project {

/// A JSON object of numbers, words, truths and nulls, and of objects of these. Whatever lies deeper, and
/// lists, are passed over. One of them can read any number of texts, one after the other.
class DetailValues {
  public:
    struct Group {}; ///< an object within
    struct Other {}; ///< a list, of which no mark has any
    using Value = std::variant<std::nullptr_t, bool, double, std::string, Group, Other>;

    /// What is asked for isn't there, or isn't of that kind.
    struct Missing {};

    /// Forgets what was, and reads anew. Throws Missing for what is no such JSON.
    void read(const std::string& json);

    /// Of the object of that name, or of the outer one when the name is empty.
    [[nodiscard]] bool is_null(std::string_view group, std::string_view key) const;
    /// Not there, or null.
    [[nodiscard]] bool lacks(std::string_view group, std::string_view key) const;
    [[nodiscard]] double number(std::string_view group, std::string_view key) const;
    [[nodiscard]] bool truth(std::string_view group, std::string_view key) const;
    [[nodiscard]] const std::string& text(std::string_view group, std::string_view key) const;
    /// Whether an object of that name is there, rather than null.
    [[nodiscard]] bool has_group(std::string_view name) const;

  private:
    class Sink;
    struct Entry {
        std::string group, key;
        Value value;
    };

    [[nodiscard]] const Value* find(std::string_view group, std::string_view key) const;
    [[nodiscard]] const Value& at(std::string_view group, std::string_view key) const;
    template <class Kind>
    [[nodiscard]] const Kind& get(std::string_view group, std::string_view key) const;

    std::vector<Entry> entries_; ///< the first `count_` of them; the others keep their memory
    std::size_t count_ = 0;
};

} // namespace luft::project
