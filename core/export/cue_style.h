// The cue sheet's own rules on top of the page's.
#pragma once

#include <string_view>

namespace luft::exports {

inline constexpr std::string_view kCueStyle = R"css(
.figures { display: grid; grid-template-columns: repeat(4, 1fr); gap: 0.8rem; margin: 0 0 1.2rem; padding: 0; }
.five { grid-template-columns: repeat(5, 1fr); }
.figures div { border-top: 3px solid var(--ink); padding-top: 0.35rem; }
.figures p { margin: 0; }
.figures .name { color: var(--soft); font-size: 0.88rem; line-height: 1.25; }
.figures .big { font-size: 1.75rem; line-height: 1.2; font-variant-numeric: lining-nums tabular-nums; }
.figures .quiet { line-height: 1.3; }
.strip { margin: 0 0 1.4rem; }
.strip figure { margin: 0; }
.strip .frame { stroke: var(--ink); stroke-width: 1; }
.strip .disc { fill: var(--paper); stroke: var(--ink); stroke-width: 1.5; }
.strip .number { text-anchor: middle; font-size: 15px; font-weight: 600; }
.strip .ruler { text-anchor: middle; font-size: 14px; fill: var(--soft); }
.strip .first { text-anchor: start; }
.strip .tick { stroke: var(--soft); }
.flag { fill: var(--yellow); stroke: var(--ink); stroke-width: 1.3; stroke-linejoin: round; }
.warnings { border: 2px solid var(--red); border-radius: 0.4rem; padding: 0.7rem 1.1rem 0.3rem; margin: 0 0 1.4rem; }
.warnings h2 { margin: 0 0 0.4rem; font-size: 1.15rem; }
.warnings h2 svg { width: 1.2rem; height: 1.1rem; vertical-align: -0.15rem; margin-right: 0.4rem; }
.warnings .sign { fill: none; stroke: var(--red); stroke-width: 2; stroke-linejoin: round; stroke-linecap: round; }
table.cues { font-size: 1rem; margin: 0; }
.cues td { padding: 0.55rem 0.9rem 0.55rem 0; }
.cues th { padding-right: 0.9rem; white-space: nowrap; }
.cues td:last-child { width: 100%; padding-right: 0; }
.cues .at { font-weight: 600; }
.cues .small { display: block; font-weight: 400; color: var(--soft); font-size: 0.85rem; white-space: nowrap; }
.cues .play td, .cues .replay td, .cues .quote td { color: var(--soft); }
.cues .play .at, .cues .replay .at, .cues .quote .at { font-weight: 400; }
.cues .sign { display: inline-block; width: 1.15rem; height: 1rem; vertical-align: -0.1rem; margin-right: 0.5rem; }
.cues .solid { fill: var(--blue); }
.cues .line { fill: none; stroke: var(--blue); stroke-width: 2.4; stroke-linecap: round; stroke-linejoin: round; }
.cues .other { fill: none; stroke: var(--green); stroke-width: 2; stroke-linejoin: round; }
.cues .talk td { border-bottom-color: var(--ink); }
.cues .talk td:last-child { border-left: 5px solid var(--red); padding-left: 1rem; }
.cues .aside td:last-child { border-left: 5px double var(--orange); padding-left: 1rem; }
.cues bdi { display: inline-block; }
.cues bdi::first-letter { text-transform: uppercase; }
.cues h3 { margin: 0 0 0.3rem; font-size: 1.05rem; }
.cues .mark { display: inline-block; min-width: 1.7rem; height: 1.7rem; line-height: 1.6rem; padding: 0 0.3rem;
  border: 2px solid var(--ink); border-radius: 0.9rem; text-align: center; font-size: 1.05rem; margin-right: 0.5rem; }
.cues .words { font-size: 1.32rem; line-height: 1.45; margin: 0 0 0.2rem; white-space: pre-line;
  overflow-wrap: anywhere; }
.cues .missing { color: var(--soft); font-style: italic; }
.cues .end td { border-bottom: 0; }
.credits dl { display: grid; grid-template-columns: max-content 1fr; gap: 0.15rem 1.2rem; margin: 0; }
.credits dt { color: var(--soft); }
.credits dd { margin: 0; overflow-wrap: anywhere; }
@media (max-width: 40rem) { .figures { grid-template-columns: repeat(2, 1fr); } .cues .words { font-size: 1.15rem; } }
@media print { .cues .words { font-size: 15.5pt; line-height: 1.4; } .figures .big { font-size: 20pt; }
  .cues td { padding-top: 0.45rem; padding-bottom: 0.45rem; } }
)css";

} // namespace luft::exports
