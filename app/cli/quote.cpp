#include "cli/quote.h"

#include "base/error.h"
#include "base/text.h"
#include "base/typed_time.h"
#include "cli/table.h"
#include "cli/typed.h"

namespace luft::cli {
namespace {

TypedQuote read(const std::string& name, const std::string& text) {
    const std::size_t at = text.rfind('@');
    const auto span =
        at == std::string::npos ? std::nullopt : typed_span(std::string_view(text).substr(at + 1));
    if (!span || at == 0)
        throw UsageError(name + " must be LABEL@START-END, as live@0:41-0:44.5, not '" + text + "'");
    if (span->end <= span->start) throw UsageError(name + " must end after it starts");
    return {text.substr(0, at), *span};
}

std::string label_of(const project::Quote& quote, const Labels& labels) {
    const auto known = labels.find(quote.performance);
    return known == labels.end() ? std::string() : known->second;
}

} // namespace

void quote_option(Verb& verb, const std::string& name, std::optional<TypedQuote>& into,
                  const std::string& help) {
    const auto into_it = [&into, name](const std::string& text) { into = read(name, text); };
    read_option(verb, name, into_it, "LABEL@START-END", help);
}

project::Quote found(const project::Project& project, const TypedQuote& typed) {
    const auto performance = project.performance(typed.label);
    if (typed.span.start >= performance.facts.duration)
        throw Error(Fault::bad_request, "The recording of '" + performance.label + "' ends at " +
                                            clock_text(performance.facts.duration) + ".");
    return {performance.id, typed.span};
}

Labels labels_of(const project::Project& project) {
    Labels labels;
    for (const auto& performance : project.performances())
        labels.emplace(performance.id, performance.label);
    return labels;
}

std::string quote_text(const project::Quote& quote, const Labels& labels) {
    return one_line(label_of(quote, labels)) + " " + clock_text(quote.span.start) + "-" +
           clock_text(quote.span.end);
}

Json quote_value(const std::optional<project::Quote>& quote, const Labels& labels) {
    if (!quote) return nullptr;
    return {{"performance", label_of(*quote, labels)},
            {"start_s", quote->span.start.value()},
            {"end_s", quote->span.end.value()}};
}

} // namespace luft::cli
