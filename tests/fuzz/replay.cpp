// Feeds committed inputs to a target, where the compiler brings no fuzzer: each file, and each cut off and
// changed. What it fed goes as a row into the file that LUFT_FAULT_ROWS names (see tests/faults/row.h).
#include "fuzz/target.h"

#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <iterator>
#include <string>
#include <vector>

namespace {

void feed(const std::string& bytes) {
    LLVMFuzzerTestOneInput(reinterpret_cast<const std::uint8_t*>(bytes.data()), bytes.size());
}

std::string read_bytes(const std::filesystem::path& file) {
    std::ifstream stream(file, std::ios::binary);
    return {std::istreambuf_iterator<char>(stream), {}};
}

/// A linear congruential generator: the same changes in every run.
class Chance {
  public:
    std::uint32_t next() {
        state_ = state_ * 1664525 + 1013904223;
        return state_ >> 8;
    }

  private:
    std::uint32_t state_ = 1;
};

/// Only what came back is counted: a fault ends the program, and its row is missing, which the page's check
/// says.
void write_row(char** argv, std::size_t files, int changes, int fed) {
    const char* rows = std::getenv("LUFT_FAULT_ROWS");
    if (!rows) return;
    const std::filesystem::path inputs = argv[1];
    const std::string program = "fuzz_" + inputs.filename().string();
    std::ofstream(rows, std::ios::app)
        << "hostile input\t" << argv[2] << "\t" << files
        << " committed inputs, each whole, cut off and changed " << changes << " times\t" << fed << "\t0\t"
        << (changes > 50 ? "LUFT_LONG=1 " : "") << "ctest --test-dir build -R faults_" << program << '\n';
}

} // namespace

int main(int argc, char** argv) {
    if (argc != 3) {
        std::cerr << "replay FOLDER FAULT\n";
        return 2;
    }
    std::vector<std::filesystem::path> files;
    for (const auto& entry : std::filesystem::directory_iterator(argv[1]))
        files.push_back(entry.path());
    std::ranges::sort(files);
    if (files.empty()) return 1;
    const int changes = std::getenv("LUFT_LONG") ? 2000 : 50;
    Chance chance;
    int fed = 0;
    for (const auto& file : files) {
        const std::string whole = read_bytes(file);
        feed(whole);
        feed(whole.substr(0, whole.size() / 2));
        for (int n = changes; n > 0 && !whole.empty(); --n) {
            std::string changed = whole;
            for (std::uint32_t flips = 1 + chance.next() % 8; flips > 0; --flips)
                changed[chance.next() % changed.size()] = static_cast<char>(chance.next());
            feed(changed);
            ++fed;
        }
        fed += 2;
    }
    std::cout << fed << " inputs from " << files.size() << " files\n";
    write_row(argv, files.size(), changes, fed);
}
