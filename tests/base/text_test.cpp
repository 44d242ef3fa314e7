#include "base/text.h"
#include "reference/notes.h"

#include <catch2/catch.hpp>

using namespace luft;

TEST_CASE("numbers have a full stop and never a minus before nothing") {
    CHECK(fixed(3.14159, 2) == "3.14");
    CHECK(fixed(-0.04, 1) == "0.0");
    CHECK(fixed(-0.0, 0) == "0");
    CHECK(fixed(-0.06, 1) == "-0.1");
    CHECK(fixed(1234567.891, 1) == "1234567.9");
}

TEST_CASE("a clock shows minutes, seconds and tenths, and hours only when there are any") {
    CHECK(clock_text(Seconds(0)) == "0:00.0");
    CHECK(clock_text(Seconds(62.34)) == "1:02.3");
    CHECK(clock_text(Seconds(59.96)) == "1:00.0"); // carries, rather than 0:60.0
    CHECK(clock_text(Seconds(3599.96)) == "1:00:00.0");
    CHECK(clock_text(Seconds(3662.3)) == "1:01:02.3");
    CHECK(clock_text(Seconds(-1.5)) == "-0:01.5");
    CHECK(clock_text(Seconds(-0.04)) == "0:00.0");
}

TEST_CASE("a timestamp is that of WebVTT: hours take a third digit from 100 hours on") {
    // W3C WebVTT, section Syntax: two or more digits of hours, exactly three of milliseconds.
    CHECK(timestamp(Seconds(3600)) == "01:00:00.000");
    CHECK(timestamp(Seconds(359999.999)) == "99:59:59.999");
    CHECK(timestamp(Seconds(360000)) == "100:00:00.000");
    CHECK(timestamp(Seconds(62.345)) == "00:01:02.345");
    CHECK(timestamp(Seconds(0.9996)) == "00:00:01.000");
    CHECK(timestamp(Seconds(-3)) == "00:00:00.000");
}

TEST_CASE("notes have their names in scientific pitch notation") {
    for (const reference::NoteRow& row : reference::kNotes)
        CHECK(note_name(MidiPitch(row.midi)) == row.name);
    CHECK(note_name(MidiPitch(0)) == "C-1");
    CHECK(note_name(MidiPitch(59.6)) == "C4");
    CHECK(note_name(MidiPitch(59.4)) == "B3");
    CHECK(note_name(MidiPitch(-1)) == "B-2");
    CHECK(off_semitone(MidiPitch(59.6)).value() == Approx(-40));
    CHECK(off_semitone(MidiPitch(69.25)).value() == Approx(25));
}

TEST_CASE("text in HTML and XML can't open a tag, an entity or a quote, nor hold control characters") {
    CHECK(escape_markup("a<b>&\"c'") == "a&lt;b&gt;&amp;&quot;c&#39;");
    CHECK(escape_markup("&amp;") == "&amp;amp;");
    CHECK(escape_markup(std::string_view("a\0b\x07\tc\nd\x1b", 9)) == "ab\tc\nd");
    CHECK(escape_markup("Überraschung – 歌") == "Überraschung – 歌");
}

TEST_CASE("well-formed UTF-8 is told from malformed by RFC 3629") {
    for (const std::string_view good :
         {"", "plain", "ü", "\xE2\x82\xAC", "\xF0\x9F\x8E\xB5", "\xC2\x80", "\xDF\xBF", "\xE0\xA0\x80",
          "\xED\x9F\xBF", "\xEE\x80\x80", "\xEF\xBF\xBF", "\xF0\x90\x80\x80", "\xF4\x8F\xBF\xBF"}) {
        CAPTURE(good);
        CHECK(is_utf8(good));
        CHECK(valid_utf8(good) == good);
    }
    for (const std::string_view bad : {
             "\x80",             // continuation alone
             "\xC0\xAF",         // overlong '/'
             "\xC1\xBF",         // overlong
             "\xE0\x9F\xBF",     // overlong, three bytes
             "\xF0\x8F\xBF\xBF", // overlong, four bytes
             "\xED\xA0\x80",     // surrogate U+D800
             "\xED\xBF\xBF",     // surrogate U+DFFF
             "\xF4\x90\x80\x80", // over U+10FFFF
             "\xF5\x80\x80\x80", // no such first byte
             "\xFF",             //
             "\xE2\x82",         // cut short
             "\xC3(",            // broken off by another character
         }) {
        CAPTURE(bad);
        CHECK_FALSE(is_utf8(bad));
        const std::string mended = valid_utf8(bad);
        CHECK(is_utf8(mended));
        CHECK(mended.find("\xEF\xBF\xBD") != std::string::npos);
    }
    CHECK(valid_utf8("a\xFF"
                     "b") == "a\xEF\xBF\xBD"
                             "b");
    CHECK(valid_utf8("\xC3(ok") == "\xEF\xBF\xBD(ok");
}

TEST_CASE("words are runs of characters with a letter or digit in them") {
    CHECK(count_words("") == 0);
    CHECK(count_words("  one,\ttwo\nthree ") == 3);
    CHECK(count_words("rise - and fall") == 3);
    CHECK(count_words("... !?") == 0);
    CHECK(count_words("Hör' auf 2 Töne") == 4);
    CHECK(count_words("(again)") == 1);
}
