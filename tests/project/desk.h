// What the project's tests share: a project in a folder that goes away, and made-up contents.
#pragma once

#include "project/project.h"
#include "tools/files.h"
#include "tools/folder.h"

#include <catch2/catch.hpp>

#include <cmath>
#include <filesystem>
#include <string>

namespace desk {

using namespace luft;
using namespace luft::project;
using namespace luft::test;
namespace fs = std::filesystem;

/// Bytes that don't repeat in any period a chunk could have (a linear congruential generator).
inline std::string noise(std::size_t size, std::uint32_t seed = 1) {
    std::string bytes(size, '\0');
    for (char& b : bytes) {
        seed = seed * 1664525 + 1013904223;
        b = static_cast<char>(seed >> 24);
    }
    return bytes;
}

/// The fault with which `call` fails; fails the test when it doesn't.
template <class Call>
Fault fault_of(Call call) {
    try {
        call();
    } catch (const Error& e) {
        CHECK_FALSE(std::string(e.what()).empty());
        return e.fault();
    }
    FAIL("should have failed");
    return Fault::internal;
}

inline Span span(double start, double end) {
    return {Seconds(start), Seconds(end)};
}

inline marks::Note note(double start, double end, double midi = 60) {
    marks::Note n;
    n.span = span(start, end);
    n.pitch = MidiPitch(midi);
    n.confidence = {0.8};
    n.evidence = "held for a while";
    return n;
}

inline marks::Breath breath(double start, double end) {
    return {span(start, end),   marks::BreathEvidence::heard, false, Decibels(24.5), {0.7},
            "a breath is heard"};
}

inline marks::Phrase phrase(double start, double end) {
    return {span(start, end), {0.9}, "between two breaths"};
}

inline marks::Switch register_switch(double time) {
    return {Seconds(time), marks::Register::chest, marks::Register::head, false,
            {0.6},         "the tone gets lighter"};
}

/// An analysis of 3 seconds: curves of 300 frames, two notes, a breath, two phrases, a switch.
inline marks::Analysis analysis(std::size_t frames = 300) {
    marks::Analysis a;
    a.duration = Seconds(static_cast<double>(frames) * 0.01);
    a.tuning = Hertz(441.5);
    a.loudness = {Lufs(-18.25), LoudnessUnits(6.5), Decibels(-1.5)};
    a.one_register = false;
    double k = 0;
    const auto fill = [&](auto& curve, double scale) {
        using C = std::remove_reference_t<decltype(curve)>;
        curve = C(frames);
        ++k;
        for (std::size_t i = 0; i < frames; ++i)
            if (i % 7 != 0)
                curve.raw()[i] = static_cast<float>(scale * (k + std::sin(0.01 * static_cast<double>(i))));
    };
    voice::Curves& c = a.curves;
    fill(c.f0, 100);
    fill(c.voicing, 0.2);
    fill(c.loudness, -10);
    fill(c.level, -10);
    fill(c.cpp, 2);
    fill(c.hnr, 3);
    fill(c.h1h2, 1);
    fill(c.ring, -2);
    fill(c.alpha, -1);
    fill(c.centroid, 90);
    fill(c.f1, 60);
    fill(c.f2, 120);
    fill(c.f3, 200);
    fill(c.head_register, 0.05);
    a.notes = {note(0.1, 0.9, 60), note(1.6, 2.8, 64.25)};
    a.breaths = {breath(1.0, 1.4)};
    a.phrases = {phrase(0.1, 0.95), phrase(1.6, 2.85)};
    a.switches = {register_switch(2.0)};
    return a;
}

/// A new project with a performance "A", linked to a small file beside it.
struct Sample {
    Folder folder;
    fs::path file = folder / "song.luft";
    Project project =
        Project::create(file, {"Morning on the quay", "N. N.", "D minor", "3/4", "One line\nand another"});
    PerformanceId a = add("a.wav", "A");

    PerformanceId add(const std::string& name, const std::string& label, bool carry = false) {
        write_all(folder / name, noise(5000, static_cast<std::uint32_t>(name.size())));
        Performance details;
        details.label = label;
        details.performer = "Mara Invented";
        details.source = "own recording";
        details.permission = "by the singer, in writing";
        details.facts = {Seconds(3), 44100, 2, true, 30000, 1001};
        return project.add_performance(folder / name, carry, details);
    }
    void reopen(Access access = Access::edit) { project = Project::open(file, access); }
};

} // namespace desk
