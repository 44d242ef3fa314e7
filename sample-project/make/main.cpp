// make-sample FOLDER: writes the sample project's recordings, their truth and the words into FOLDER.
#include "base/error.h"
#include "base/write_file.h"
#include "make/make_sample.h"

#include <iostream>
#include <string>

int main(int argc, char** argv) {
    using namespace luft;
    if (argc != 2 || std::string(argv[1]).starts_with('-')) {
        std::cerr << "Usage: make-sample FOLDER\n"
                     "Sings and draws the sample project's two performances into FOLDER/media, with what "
                     "they truly\n"
                     "hold in FOLDER/truth and the words in FOLDER/words.txt.\n";
        return 2;
    }
    try {
        const std::filesystem::path folder(argv[1]);
        for (const auto& p : {sample::first_performance(), sample::second_performance()}) {
            sample::make_performance(p, folder);
            std::cout << (folder / sample::movie_file(p)).string() << '\n';
        }
        std::string words;
        const auto lines = sample::plain_lines({});
        for (std::size_t k = 0; k < lines.size(); ++k)
            words += (k == lines.size() / 2 ? "\n" : "") + lines[k].words + "\n";
        write_file(folder / "words.txt", words);
    } catch (const Error& e) {
        std::cerr << e.what() << ' ' << e.advice() << '\n';
        return 1;
    }
    return 0;
}
