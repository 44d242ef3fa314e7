#include "cli/frame.h"

#include "base/error.h"
#include "base/write_file.h"
#include "cli/table.h"
#include "files/write_all.h"

#include <cerrno>
#include <cstdio>
#include <cstring>

namespace luft::cli {

void Frame::run() {
    // However the work ends, the progress line is off the terminal before anything else is said.
    class LineOff {
      public:
        explicit LineOff(Frame& frame) : frame_(frame) {}
        LineOff(const LineOff&) = delete;
        LineOff& operator=(const LineOff&) = delete;
        ~LineOff() {
            frame_.line_.reset();
            frame_.interrupt_.reset();
        }

      private:
        Frame& frame_;
    };
    const LineOff off(*this);
    interrupt_.emplace();
    if (work_) work_();
}

void Frame::print(std::string_view text) {
    if (line_) line_->clear();
    const bool written = std::fwrite(text.data(), 1, text.size(), stdout) == text.size();
    if (!written || std::fflush(stdout) != 0)
        throw Error(Fault::cannot_write,
                    std::string("The output can't be written: ") + std::strerror(errno) + ".");
}

void Frame::note(std::string_view line) {
    if (line_) line_->clear();
    std::fprintf(stderr, "%s\n", one_line(line).c_str());
}

void Frame::deliver(std::string_view text, const std::string& out,
                    const std::vector<std::filesystem::path>& sources) {
    Progress({}, interrupt_->stop_token()).step(1, "");
    if (out.empty()) return print(text);
    files::spare(out, sources);
    write_file(out, text);
}

Progress Frame::progress() {
    line_.emplace();
    return Progress([this](double done, std::string_view doing) { line_->show(done, doing); },
                    interrupt_->stop_token());
}

} // namespace luft::cli
