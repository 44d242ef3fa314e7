#include "cli/verb.h"

#include "base/bytes.h"
#include "base/text.h"
#include "base/write_file.h"

#include <cerrno>
#include <cstdio>
#include <cstring>

namespace luft::cli {
namespace {

/// Text files are short: words of a song, a remark. More than this is not one.
constexpr std::int64_t kMostTextBytes = 4 << 20;

/// One or two digits fewer than what double holds exactly; a time has no more.
constexpr std::size_t kMostDigits = 12;

/// Reads digits, with a fraction where allowed; none when it isn't a number.
std::optional<double> number(std::string_view text, bool fraction) {
    double value = 0;
    double place = 0; // 0 before the point
    std::size_t digits = 0;
    for (const char c : text) {
        if (c == '.' && fraction && place == 0) {
            place = 1;
        } else if (c >= '0' && c <= '9' && ++digits <= kMostDigits) {
            value = value * 10 + (c - '0');
            place *= 10;
        } else {
            return std::nullopt;
        }
    }
    if (digits == 0) return std::nullopt;
    return place == 0 ? value : value / place;
}

} // namespace

void Frame::run() {
    // However the work ends, the progress line is off the terminal before anything else is said.
    struct LineOff {
        std::optional<ProgressLine>& line;
        ~LineOff() { line.reset(); }
    } const off{line_};
    if (work_) work_();
}

void Frame::print(std::string_view text) const {
    const bool written = std::fwrite(text.data(), 1, text.size(), stdout) == text.size();
    if (!written || std::fflush(stdout) != 0)
        throw Error(Fault::cannot_write,
                    std::string("The output can't be written: ") + std::strerror(errno) + ".");
}

void Frame::note(std::string_view line) const {
    std::fprintf(stderr, "%.*s\n", static_cast<int>(line.size()), line.data());
}

void Frame::deliver(std::string_view text, const std::string& out,
                    const std::vector<std::filesystem::path>& sources) const {
    if (out.empty()) return print(text);
    for (const auto& source : sources) {
        std::error_code ignored;
        if (std::filesystem::equivalent(source, out, ignored))
            throw Error(Fault::bad_request, "'" + out + "' is what the result is made from.",
                        "Give --out another name.");
    }
    write_file(out, text);
}

Progress Frame::progress() {
    line_.emplace();
    return Progress([this](double done, std::string_view doing) { line_->show(done, doing); },
                    line_->stop_token());
}

void example(CLI::App* verb, const std::string& lines) {
    verb->footer("Example:\n" + lines);
}

void project_option(CLI::App* verb, std::string& project) {
    verb->add_option("PROJECT", project, "The project file, NAME.luft")->required()->type_name("");
}

void project_and_action(CLI::App* verb, std::string& project) {
    // Not `required()`: that would take the name of an action for the project, so that neither
    // `luftpause mark keep --help` nor a forgotten project would be understood.
    verb->add_option("PROJECT", project, "The project file, NAME.luft")->type_name("");
    verb->require_subcommand(1);
    verb->parse_complete_callback([&project] {
        if (project.empty()) throw CLI::RequiredError("PROJECT");
    });
}

void ids_option(CLI::App* action, std::vector<std::int64_t>& ids, int how_many, const std::string& help) {
    CLI::Option* option = how_many == 1 ? action->add_option_function<std::int64_t>(
                                              "ID", [&ids](const std::int64_t& id) { ids = {id}; }, help)
                                        : action->add_option("ID", ids, help)->expected(how_many);
    option->required()->type_name("");
}

void performance_option(CLI::App* verb, std::string& label) {
    verb->add_option("--performance", label, "Which performance; needed when there are several")
        ->type_name("LABEL");
}

void out_option(CLI::App* verb, std::string& out) {
    verb->add_option("--out", out, "Write to this file instead of to the terminal")->type_name("FILE");
}

CLI::Option* text_option(CLI::App* verb, const std::string& name, std::optional<std::string>& into,
                         const std::string& help) {
    return verb
        ->add_option_function<std::string>(
            name,
            [&into, name](const std::string& text) {
                if (!is_utf8(text)) throw CLI::ValidationError(name + " is not UTF-8 text");
                into = text;
            },
            help)
        ->type_name("TEXT");
}

CLI::Option* time_option(CLI::App* verb, const std::string& name, std::optional<Seconds>& into,
                         const std::string& help) {
    return verb
        ->add_option_function<std::string>(
            name, [&into](const std::string& text) { into = parse_time(text); }, help)
        ->type_name("TIME");
}

CLI::Option* number_option(CLI::App* verb, const std::string& name, std::optional<double>& into, double low,
                           double high, const std::string& help) {
    return verb
        ->add_option_function<double>(
            name,
            [&into, low, high, name](const double& value) {
                if (!(value >= low && value <= high)) // so written, 'not a number' fails too
                    throw CLI::ValidationError(name + " must be from " + fixed(low, 0) + " to " +
                                               fixed(high, 0));
                into = value;
            },
            help)
        ->type_name("NUMBER");
}

Seconds parse_time(const std::string& text) {
    const auto wrong = [&] {
        return CLI::ValidationError("'" + text +
                                    "' is not a time; write seconds or minutes:seconds, as 62.5 "
                                    "or 1:02.5");
    };
    double seconds = 0;
    std::size_t from = 0;
    for (int part = 0; part < 3; ++part) {
        const std::size_t colon = text.find(':', from);
        const bool last = colon == std::string::npos;
        const auto value = number(std::string_view(text).substr(from, last ? colon : colon - from), last);
        if (!value || (part > 0 && *value >= 60)) throw wrong();
        seconds = seconds * 60 + *value;
        if (last) return Seconds(seconds);
        from = colon + 1;
    }
    throw wrong();
}

std::string read_text_file(const std::string& file) {
    const auto bytes = open_file(file);
    if (bytes->size() > kMostTextBytes)
        throw Error(Fault::unreadable, "'" + file + "' is too large for a text.");
    std::string text(static_cast<std::size_t>(bytes->size()), '\0');
    std::size_t got = 0;
    while (got < text.size()) {
        const std::size_t n = bytes->read_at(static_cast<std::int64_t>(got),
                                             std::as_writable_bytes(std::span(text).subspan(got)));
        if (n == 0) break;
        got += n;
    }
    text.resize(got);
    if (!is_utf8(text))
        throw Error(Fault::unreadable, "'" + file + "' is not UTF-8 text.",
                    "Save it as UTF-8 and try again.");
    text.erase(text.find_last_not_of("\r\n") + 1);
    return text;
}

} // namespace luft::cli
