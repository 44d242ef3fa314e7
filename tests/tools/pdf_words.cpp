#include "tools/pdf_words.h"

#include "tools/programs.h"

#include <algorithm>
#include <cstdio>
#include <sstream>

namespace luft::test {

std::vector<PdfWord> pdf_words(const std::filesystem::path& file) {
    std::istringstream in(run("pdftotext -bbox " + quoted(file) + " -"));
    std::vector<PdfWord> words;
    std::string line;
    int page = 0;
    while (std::getline(in, line)) {
        if (line.find("<page ") != std::string::npos) ++page;
        PdfWord w;
        if (std::sscanf(line.c_str(), " <word xMin=\"%lf\" yMin=\"%lf\" xMax=\"%lf\" yMax=\"%lf\">", &w.left,
                        &w.top, &w.right, &w.bottom) != 4)
            continue;
        w.page = page;
        const auto start = line.find("\">") + 2;
        w.text = line.substr(start, line.find("</word>") - start);
        words.push_back(w);
    }
    return words;
}

int overlaps(const std::vector<PdfWord>& words) {
    int pairs = 0;
    for (std::size_t i = 0; i < words.size(); ++i)
        for (std::size_t j = i + 1; j < words.size() && words[j].page == words[i].page; ++j) {
            const PdfWord &a = words[i], &b = words[j];
            const double across = std::min(a.right, b.right) - std::max(a.left, b.left);
            const double down = std::min(a.bottom, b.bottom) - std::max(a.top, b.top);
            if (across > 0.5 && down > 0.25 * std::min(a.bottom - a.top, b.bottom - b.top)) ++pairs;
        }
    return pairs;
}

} // namespace luft::test
