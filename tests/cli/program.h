// What the command line's tests share: the built program, and a folder of their own.
#pragma once

#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

namespace luft::cli::test {

/// A folder that is gone at the end of the test.
class Folder {
  public:
    Folder();
    Folder(const Folder&) = delete;
    Folder& operator=(const Folder&) = delete;
    ~Folder();
    [[nodiscard]] std::string operator/(std::string_view name) const { return (path_ / name).string(); }
    [[nodiscard]] const std::filesystem::path& path() const { return path_; }
    /// Names of everything in it, sorted, folders' contents included.
    [[nodiscard]] std::vector<std::string> names() const;

  private:
    std::filesystem::path path_;
};

struct Outcome {
    int status = 0; ///< exit status; 128 + signal when a signal ended it
    std::string out, err;
};

/// Runs a program of PATH, or of a path, with these arguments and without a terminal.
Outcome run(const std::string& program, const std::vector<std::string>& arguments);

/// Runs `luftpause`.
Outcome luftpause(const std::vector<std::string>& arguments);

/// Runs `luftpause`, which must succeed and say nothing on standard error; what it printed.
std::string done(const std::vector<std::string>& arguments);

/// Starts `luftpause`, sends it SIGINT once `milliseconds` have gone, and waits for its end.
Outcome interrupted(const std::vector<std::string>& arguments, int milliseconds);

std::string read_all(const std::filesystem::path& file);
void write_all(const std::filesystem::path& file, std::string_view bytes);

/// Non-empty lines.
std::vector<std::string> lines(const std::string& text);

/// The number right after `words` in a text; fails the test when it isn't there.
std::string after(const std::string& text, const std::string& words);

} // namespace luft::cli::test
