/** The one style sheet: black on white, for A4 paper and for a screen of any width. */
export const STYLE = `html { font: 11pt/1.4 serif; color: #000; background: #fff; }
body { margin: 0; }
main { max-width: 60em; margin: 0 auto; padding: 1em; overflow-wrap: anywhere; }
h1 { font-size: 1.5em; }
h2 { font-size: 1.2em; border-bottom: 1px solid; }
h3 { font-size: 1em; border-bottom: 1px dotted; }
h4 { font-size: 1em; margin-bottom: 0; }
h1, h2, h3, h4, caption { break-after: avoid; }
table { border-collapse: collapse; width: 100%; margin: 1em 0; font-size: 0.9em; }
caption { text-align: left; font-style: italic; }
th, td { border: 1px solid #888; padding: 0.2em 0.4em; text-align: left; vertical-align: top; }
th, td { overflow-wrap: break-word; }
td bdi { overflow-wrap: anywhere; }
td:has(bdi) { min-width: 7em; max-width: 16em; }
.number { text-align: right; font-variant-numeric: tabular-nums; }
tr, .danger, .caution, .note, .signature { break-inside: avoid; }
.danger, .caution, .note { border: 1px solid; padding: 0.3em 0.6em; }
.danger { border-width: 3px; }
.caution { border-style: dashed; }
.equation { margin-left: 2em; }
.signs { break-after: avoid; }
.signature { display: flex; gap: 2em; }
.signature span { flex: 1; border-top: 1px solid; margin-top: 3em; font-size: 0.8em; }
.page { border: 0; break-after: page; }
@media screen and (max-width: 56em) {
  table { display: block; overflow-x: auto; }
  caption { display: block; }
  th, td { overflow-wrap: normal; min-width: 3em; }
}
@media print {
  html { font-size: 9pt; line-height: 1.2; }
  main { max-width: none; padding: 0 1px; }
  h1 { font-size: 1.3em; }
  h1, h2 { margin: 0.4em 0; }
  p, ul, ol, table { margin: 0.4em 0; }
  ul, ol { padding-left: 2em; }
  ul:has(> :nth-child(11)) { columns: 2; column-gap: 2.5em; }
  tbody:has(> :nth-child(17)) td { padding: 0 0.4em; }
  .danger, .caution, .note { margin: 0.3em 0; padding: 0.1em 0.6em; }
  .danger { border-width: 2px; }
  h4 { margin: 0.8em 0 0; }
  .equation br { display: none; }
  .equation small { display: block; }
}
@page { size: A4; margin: 12mm; }
`;
