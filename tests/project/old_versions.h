// Projects of earlier versions, as the program wrote them then: the tables word for word, a little in them.
#pragma once

namespace desk {

inline constexpr const char* kVersion1Edited = R"sql(
CREATE TABLE piece (
    id INTEGER PRIMARY KEY CHECK (id = 1),
    title TEXT NOT NULL, writer TEXT NOT NULL, music_key TEXT NOT NULL, metre TEXT NOT NULL,
    words TEXT NOT NULL
) STRICT;
CREATE TABLE script_settings (
    id INTEGER PRIMARY KEY CHECK (id = 1),
    words_per_minute REAL NOT NULL CHECK (words_per_minute > 0),
    least_between_stops_s REAL NOT NULL CHECK (least_between_stops_s >= 0),
    longest_quote_s REAL NOT NULL CHECK (longest_quote_s > 0),
    most_quoted_share REAL CHECK (most_quoted_share BETWEEN 0 AND 1),
    frame_rate_num INTEGER NOT NULL CHECK (frame_rate_num >= 0),
    frame_rate_den INTEGER NOT NULL CHECK (frame_rate_den > 0),
    drop_frame INTEGER NOT NULL CHECK (drop_frame IN (0, 1))
) STRICT;
CREATE TABLE facet (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    key TEXT NOT NULL UNIQUE, name TEXT NOT NULL, description TEXT NOT NULL,
    basis TEXT NOT NULL CHECK (basis IN ('measured', 'hint', 'coach')),
    own INTEGER NOT NULL CHECK (own IN (0, 1))
) STRICT;
CREATE TABLE shade (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    facet TEXT NOT NULL REFERENCES facet (key),
    key TEXT NOT NULL, name TEXT NOT NULL, description TEXT NOT NULL,
    leaning TEXT NOT NULL CHECK (leaning IN ('strength', 'watch', 'neutral')),
    UNIQUE (facet, key)
) STRICT;
CREATE TABLE drill (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    key TEXT NOT NULL UNIQUE, title TEXT NOT NULL, aim TEXT NOT NULL,
    steps TEXT NOT NULL,
    caution TEXT NOT NULL,
    trains TEXT NOT NULL,
    own INTEGER NOT NULL CHECK (own IN (0, 1))
) STRICT;
CREATE TABLE performance (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    label TEXT NOT NULL UNIQUE,
    performer TEXT NOT NULL, source TEXT NOT NULL, permission TEXT NOT NULL,
    media_path TEXT NOT NULL,
    media_size INTEGER NOT NULL CHECK (media_size > 0),
    media_sha256 TEXT NOT NULL CHECK (length(media_sha256) = 64),
    carried INTEGER REFERENCES carried (id),
    duration_s REAL NOT NULL CHECK (duration_s >= 0),
    sample_rate_hz INTEGER NOT NULL CHECK (sample_rate_hz >= 0),
    channels INTEGER NOT NULL CHECK (channels >= 0),
    has_video INTEGER NOT NULL CHECK (has_video IN (0, 1)),
    frame_rate_num INTEGER NOT NULL CHECK (frame_rate_num >= 0),
    frame_rate_den INTEGER NOT NULL CHECK (frame_rate_den > 0)
) STRICT;
CREATE TABLE mark (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    performance INTEGER NOT NULL REFERENCES performance (id),
    kind TEXT NOT NULL CHECK (kind IN ('note', 'breath', 'phrase', 'switch')),
    state TEXT NOT NULL CHECK (state IN ('proposed', 'kept', 'dropped')),
    origin TEXT NOT NULL CHECK (origin IN ('detected', 'coach')),
    start_s REAL NOT NULL CHECK (start_s >= 0),
    end_s REAL NOT NULL,
    confidence REAL NOT NULL CHECK (confidence BETWEEN 0 AND 1),
    evidence TEXT NOT NULL,
    detail TEXT NOT NULL,
    found_start_s REAL, found_end_s REAL,
    CHECK (end_s >= start_s)
) STRICT;
CREATE INDEX mark_by_time ON mark (performance, start_s);
CREATE TABLE moment (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    performance INTEGER NOT NULL REFERENCES performance (id),
    start_s REAL NOT NULL CHECK (start_s >= 0),
    end_s REAL NOT NULL,
    state TEXT NOT NULL CHECK (state IN ('proposed', 'kept', 'dropped')),
    origin TEXT NOT NULL CHECK (origin IN ('detected', 'coach')),
    verdict TEXT NOT NULL CHECK (verdict IN ('strength', 'watch', 'explain')),
    remark TEXT NOT NULL,
    evidence TEXT NOT NULL,
    confidence REAL NOT NULL CHECK (confidence BETWEEN 0 AND 1),
    drill TEXT REFERENCES drill (key),
    CHECK (end_s > start_s)
) STRICT;
CREATE INDEX moment_by_time ON moment (performance, start_s);
CREATE TABLE moment_shade (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    moment INTEGER NOT NULL REFERENCES moment (id),
    facet TEXT NOT NULL, shade TEXT NOT NULL,
    UNIQUE (moment, facet, shade),
    FOREIGN KEY (facet, shade) REFERENCES shade (facet, key)
) STRICT;
CREATE TABLE script_item (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    performance INTEGER NOT NULL REFERENCES performance (id),
    position INTEGER NOT NULL CHECK (position > 0),
    kind TEXT NOT NULL CHECK (kind IN ('opening', 'stop', 'aside', 'closing')),
    moment INTEGER REFERENCES moment (id),
    at_s REAL NOT NULL CHECK (at_s >= 0),
    replay_start_s REAL CHECK (replay_start_s >= 0),
    replay_end_s REAL,
    replay_speed REAL NOT NULL CHECK (replay_speed BETWEEN 0.25 AND 1),
    resume_s REAL CHECK (resume_s >= 0),
    text TEXT NOT NULL,
    own_words INTEGER NOT NULL CHECK (own_words IN (0, 1)),
    rehearsed_s REAL CHECK (rehearsed_s >= 0),
    CHECK ((replay_start_s IS NULL) = (replay_end_s IS NULL)),
    CHECK (replay_end_s > replay_start_s)
) STRICT;
CREATE INDEX script_item_by_place ON script_item (performance, position);
CREATE INDEX script_item_by_moment ON script_item (moment);
)sql";

inline constexpr const char* kVersion1Derived = R"sql(
CREATE TABLE listening (
    performance INTEGER PRIMARY KEY,
    setting TEXT NOT NULL CHECK (setting IN ('alone', 'accompanied')),
    tuning_hz REAL NOT NULL CHECK (tuning_hz > 0),
    integrated_lufs REAL, range_lu REAL, true_peak_dbtp REAL,
    one_register INTEGER NOT NULL CHECK (one_register IN (0, 1)),
    duration_s REAL NOT NULL CHECK (duration_s >= 0),
    frames INTEGER NOT NULL CHECK (frames >= 0)
) STRICT;
CREATE TABLE curve (
    id INTEGER PRIMARY KEY,
    performance INTEGER NOT NULL, name TEXT NOT NULL,
    samples BLOB NOT NULL,
    UNIQUE (performance, name)
) STRICT;
CREATE TABLE carried (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    name TEXT NOT NULL, size INTEGER NOT NULL CHECK (size > 0), chunk_size INTEGER NOT NULL CHECK (chunk_size > 0)
) STRICT;
CREATE TABLE carried_chunk (
    id INTEGER PRIMARY KEY,
    carried INTEGER NOT NULL REFERENCES carried (id), position INTEGER NOT NULL CHECK (position >= 0),
    bytes BLOB NOT NULL,
    UNIQUE (carried, position)
) STRICT;
)sql";

inline constexpr const char* kVersion1Journal = R"sql(
CREATE TABLE journal_entry (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    label TEXT NOT NULL, made_at TEXT NOT NULL,
    undone INTEGER NOT NULL CHECK (undone IN (0, 1))
) STRICT;
CREATE TABLE journal_step (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    entry INTEGER NOT NULL REFERENCES journal_entry (id),
    table_name TEXT NOT NULL, row_id INTEGER NOT NULL,
    change TEXT NOT NULL CHECK (change IN ('added', 'changed', 'removed'))
) STRICT;
CREATE INDEX journal_step_by_entry ON journal_step (entry);
CREATE TABLE journal_value (
    step INTEGER NOT NULL REFERENCES journal_step (id),
    column_name TEXT NOT NULL,
    before ANY, after ANY,
    PRIMARY KEY (step, column_name)
) STRICT, WITHOUT ROWID;
)sql";

/// A piece, a performance, a phrase that the coach has kept, and the journal of that keeping.
inline constexpr const char* kVersion1Contents = R"sql(
INSERT INTO piece VALUES (1, 'Morning on the quay', 'N. N.', 'D minor', '3/4', 'One line' || char(10) || 'and another');
INSERT INTO script_settings VALUES (1, 150.0, 8.0, 30.0, NULL, 0, 1, 1);
INSERT INTO performance (label, performer, source, permission, media_path, media_size, media_sha256, carried,
    duration_s, sample_rate_hz, channels, has_video, frame_rate_num, frame_rate_den)
    VALUES ('A', 'Mara Invented', 'own recording', 'hers', 'a.wav', 5000, printf('%064d', 0), NULL, 3.0, 44100, 2, 0, 0, 1);
INSERT INTO mark (performance, kind, state, origin, start_s, end_s, confidence, evidence, detail, found_start_s, found_end_s)
    VALUES (1, 'phrase', 'kept', 'detected', 0.1, 0.95, 0.9, 'between two breaths', '{"level":null,"dynamic":null}', 0.1, 0.95);
INSERT INTO journal_entry (label, made_at, undone) VALUES ('keep phrase at 0:00.1', '2026-01-02T03:04:05Z', 0);
INSERT INTO journal_step (entry, table_name, row_id, change) VALUES (1, 'mark', 1, 'changed');
INSERT INTO journal_value VALUES (1, 'state', 'proposed', 'kept');
PRAGMA application_id = 1280656980;
PRAGMA user_version = 1;
)sql";

/// What version 2 added, word for word, and a word in it.
inline constexpr const char* kVersion2Added = R"sql(
CREATE TABLE sung_word (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    performance INTEGER NOT NULL REFERENCES performance (id),
    ordinal INTEGER NOT NULL CHECK (ordinal > 0),
    text TEXT NOT NULL CHECK (length(text) > 0),
    joins INTEGER NOT NULL CHECK (joins IN (0, 1)),
    at_s REAL NOT NULL CHECK (at_s >= 0),
    placed INTEGER NOT NULL CHECK (placed IN (0, 1))
) STRICT;
CREATE INDEX sung_word_in_order ON sung_word (performance, ordinal);
INSERT INTO sung_word VALUES (1, 1, 1, 'One', 0, 0.1, 1);
PRAGMA user_version = 2;
)sql";

} // namespace desk
