/** How papers look: black on white, safe for any printer. */
export const PAPER_STYLE = `
:root { color-scheme: light; }
* { box-sizing: border-box; }
body { margin: 0; color: #000; background: #fff; font: 9.2pt/1.3 "Liberation Sans", Arial, Helvetica, sans-serif; }
.page { display: flex; flex-direction: column; background: #fff; break-after: page; overflow-wrap: anywhere; }
.page:last-child { break-after: auto; }
header { border-bottom: 0.5mm solid #000; margin-bottom: 3mm; padding-bottom: 1.5mm; }
h1 { margin: 0 0 1mm; font-size: 17pt; line-height: 1.1; }
h2 { margin: 3mm 0 1mm; font-size: 11pt; line-height: 1.2; }
main { flex: 1; }
main > :first-child { margin-top: 0; }
dl { display: flex; gap: 6mm; margin: 0; }
dl div { display: flex; gap: 1.5mm; }
dl div:first-child { flex: 1; }
dt { color: #333; }
dt::after { content: ":"; }
dd { margin: 0; font-weight: bold; }
.write { display: inline-block; width: 26mm; border-bottom: 0.2mm solid #000; }
p { margin: 0 0 1.6mm; }
ul, ol { margin: 0 0 2mm; padding-left: 5mm; }
li { margin: 0 0 0.4mm; }
table { width: 100%; margin: 0 0 3mm; border-collapse: collapse; table-layout: fixed; }
th, td { padding: 0.5mm 1.2mm; border: 0.2mm solid #777; text-align: right; vertical-align: top; font-weight: normal; }
thead th { border-bottom: 0.4mm solid #000; font-weight: bold; vertical-align: bottom; }
tbody th, thead th:first-child, .words { text-align: left; }
td { font-variant-numeric: tabular-nums; }
.dense { font-size: 7.6pt; }
.dense th, .dense td { padding: 0.35mm 1mm; }
td.blank { background: #fff; }
tr { break-inside: avoid; }
strong { font-weight: bold; }
figure { margin: 0 0 2mm; }
figcaption { font-size: 8.5pt; }
.views { display: flex; justify-content: space-between; gap: 4mm; }
.plots { display: flex; flex-wrap: wrap; justify-content: space-between; gap: 2mm 0; }
svg { display: block; }
svg text { font-family: "Liberation Sans", Arial, Helvetica, sans-serif; fill: #000; }
.numbers { margin: 0 0 2mm; padding: 0; list-style: none; }
.numbers li { display: grid; grid-template-columns: 46mm 1fr; gap: 4mm; padding: 1.6mm 0; border-bottom: 0.2mm solid #777; }
.numbers b { font-size: 16pt; line-height: 1.1; }
.numbers small { display: block; font-size: 8.5pt; }
footer { display: flex; justify-content: space-between; border-top: 0.2mm solid #000; padding-top: 1.2mm; font-size: 8.5pt; }
@media screen {
  body { background: #6d7477; padding: 4mm; }
  .page { margin: 0 auto 5mm; }
}
`;
