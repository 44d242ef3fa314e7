#include "export/page_style.h"

namespace luft::exports {
namespace {

// Colours: Okabe & Ito 2008, "Color Universal Design"; on dark paper the darkest of them are lightened so
// that they keep their contrast. Type is large enough to be read from a music stand.
constexpr std::string_view kStyle = R"css(
:root { --ink: #1d1b18; --soft: #5d5850; --faint: #8d877c; --rule: #d9d3c6; --paper: #fffdf8; --card: #f8f4ea;
  --blue: #0072b2; --orange: #e69f00; --green: #009e73; --sky: #56b4e9; --yellow: #f0e442; --red: #d55e00;
  --purple: #cc79a7; color-scheme: light dark; }
@media screen and (prefers-color-scheme: dark) {
  :root { --ink: #ece7dc; --soft: #b5ae9f; --faint: #8f897c; --rule: #45413a; --paper: #1b1a17; --card: #25231f;
    --blue: #4ba3db; --orange: #e69f00; --green: #2dbd94; --red: #ef7d2b; } }
* { box-sizing: border-box; }
html { font-size: 112.5%; }
body { margin: 0; background: var(--paper); color: var(--ink); line-height: 1.5;
  font-family: "Iowan Old Style", "Palatino Linotype", Palatino, "Book Antiqua", Charter, Georgia, "Noto Serif",
    "DejaVu Serif", serif; font-variant-numeric: lining-nums; -webkit-print-color-adjust: exact;
  print-color-adjust: exact; }
main { max-width: 54rem; margin: 0 auto; padding: 2.5rem 2rem 3rem; }
header { border-bottom: 2px solid var(--ink); padding-bottom: 1rem; margin-bottom: 1.5rem; }
h1 { font-size: 2.1rem; line-height: 1.15; font-weight: 600; margin: 0; overflow-wrap: anywhere; }
h2 { font-size: 1.35rem; line-height: 1.25; font-weight: 600; margin: 2.2rem 0 0.6rem; break-after: avoid; }
h3 { font-size: 1.08rem; line-height: 1.3; font-weight: 600; margin: 1.2rem 0 0.3rem; break-after: avoid; }
p { margin: 0 0 0.6rem; }
.kind { font-variant: small-caps; letter-spacing: 0.06em; color: var(--soft); margin: 0 0 0.2rem; }
.subtitle { font-size: 1.1rem; color: var(--soft); margin: 0.4rem 0 0; }
.facts { list-style: none; margin: 0.6rem 0 0; padding: 0; color: var(--soft); font-size: 0.9rem; }
.facts li { display: inline-block; overflow-wrap: anywhere; }
.facts li + li::before { content: " \00b7  "; white-space: pre; color: var(--faint); }
.lead { font-size: 1.12rem; }
.quiet { color: var(--soft); font-size: 0.88rem; }
.time { font-variant-numeric: lining-nums tabular-nums; white-space: nowrap; }
.keep, figure > svg, figcaption, tr { break-inside: avoid; }
.cards { display: grid; grid-template-columns: repeat(auto-fit, minmax(15rem, 1fr)); gap: 1rem; margin: 1rem 0; }
.card { background: var(--card); border: 1px solid var(--rule); border-radius: 0.4rem; padding: 0.9rem 1.1rem; }
.card > :first-child { margin-top: 0; }
.card > :last-child { margin-bottom: 0; }
.key { display: flex; flex-wrap: wrap; gap: 0.2rem 1.2rem; align-items: center; list-style: none; margin: 0.3rem 0;
  padding: 0; font-size: 0.85rem; color: var(--soft); }
.key li { display: flex; align-items: center; gap: 0.4rem; }
.key svg { flex: none; }
.unit { white-space: nowrap; }
figure { margin: 0.8rem 0; }
figcaption { color: var(--soft); font-size: 0.88rem; margin-top: 0.3rem; }
figure > svg { display: block; width: 100%; height: auto; }
svg text { font-family: inherit; fill: var(--ink); }
ul, ol { margin: 0.3rem 0 0.8rem; padding-left: 1.3rem; }
li { margin-bottom: 0.35rem; }
table { border-collapse: collapse; width: 100%; margin: 0.6rem 0 1rem; font-size: 0.92rem; }
thead { display: table-header-group; }
th, td { text-align: left; vertical-align: top; padding: 0.3rem 0.7rem 0.3rem 0; border-bottom: 1px solid var(--rule); }
th { font-weight: 600; color: var(--soft); }
.num { text-align: right; font-variant-numeric: lining-nums tabular-nums; white-space: nowrap; }
footer { border-top: 1px solid var(--rule); margin-top: 2.5rem; padding-top: 0.2rem; color: var(--soft);
  font-size: 0.85rem; break-inside: avoid; }
footer h2 { font-size: 1rem; margin: 1rem 0 0.4rem; }
@media (max-width: 40rem) { main { padding: 1.2rem 1rem 2rem; } h1 { font-size: 1.6rem; } }
@page { size: A4; margin: 14mm 15mm; }
@media print {
  html { font-size: 10.5pt; }
  body { background: none; }
  main { max-width: none; padding: 0; }
  h2 { margin-top: 1.4rem; }
  p, li { orphans: 2; widows: 2; }
  header { padding-bottom: 0.6rem; margin-bottom: 0.9rem; }
  .card { background: none; }
}
)css";

} // namespace

std::string_view page_style() {
    return kStyle;
}

} // namespace luft::exports
