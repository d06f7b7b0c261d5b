import { look } from '../../report/index.ts';

const LIGHT = `--paper: ${look.paper}; --sheet: ${look.light}; --ink: ${look.ink}; --faint: ${look.faintInk}; --line: ${look.line}; --accent: ${look.accent}; --material: ${look.material}; --lit: #f3d27a; --lit-ink: #2a2105; --dark: #1f2d36; --dark-ink: #fffdf6;`;
const DARK = `--paper: #141c21; --sheet: #1f2a31; --ink: #e9e4d6; --faint: #a8b2b5; --line: #3a474f; --accent: #f0966a; --material: #93a4ad; --lit: #f3d27a; --lit-ink: #2a2105; --dark: #05090b; --dark-ink: #f2eee2;`;

/** Style of the page: the look of every paper, light and dark, narrow and wide, and one sheet for the poster. */
export const explainStyle = `
:root { color-scheme: light dark; ${LIGHT} }
@media screen and (prefers-color-scheme: dark) { :root { ${DARK} } }
* { box-sizing: border-box; }
html { background: var(--paper); }
body { margin: 0 auto; padding: 1.25rem 1rem 4rem; max-width: 66rem; color: var(--ink); font: 1rem/1.55 ${look.font}; }
h1 { font-size: 1.7rem; line-height: 1.2; margin: 0 0 .4rem; overflow-wrap: anywhere; }
h2 { font-size: 1.2rem; line-height: 1.25; margin: 2.4rem 0 .6rem; border-top: 1px solid var(--line); padding-top: .9rem; }
h3 { font-size: 1rem; margin: 1.4rem 0 .4rem; }
p { max-width: 44rem; margin: 0 0 .8rem; }
.lead { font-size: 1.1rem; }
.faint, figcaption, small { color: var(--faint); }
.turning { display: grid; grid-template-columns: minmax(0, 3fr) minmax(0, 2fr); gap: 1.5rem; align-items: start; }
#stage { width: 100%; max-height: 34rem; display: block; touch-action: none; cursor: grab; background: var(--sheet); border: 1px solid var(--line); }
#stage:active { cursor: grabbing; }
.material { fill: var(--material); } .low { fill: var(--material); opacity: .75; } .blank { fill: #d8d5ca; } .mark { fill: none; stroke: var(--accent); }
.index { fill: var(--accent); }
.spot { stroke: var(--accent); } .spot.light { fill: var(--lit); } .spot.dark { fill: var(--dark); }
.digit { font-weight: 700; pointer-events: none; } .digit.light { fill: var(--lit-ink); } .digit.dark { fill: var(--dark-ink); } .digit.colour { fill: #fff; stroke: #000; stroke-width: .6px; paint-order: stroke; }
label { display: block; font-weight: 600; margin-top: .6rem; }
input[type='range'] { width: 100%; height: 2rem; margin: 0; accent-color: var(--accent); }
input[type='radio'] { accent-color: var(--accent); width: 1.2rem; height: 1.2rem; margin: 0 .5rem 0 0; flex: none; }
:focus-visible { outline: 3px solid var(--accent); outline-offset: 2px; }
dl.reads { display: grid; grid-template-columns: auto 1fr; gap: .1rem 1rem; margin: .8rem 0; font-variant-numeric: tabular-nums; }
dl.reads dt { color: var(--faint); } dl.reads dd { margin: 0; font-weight: 700; font-size: 1.15rem; overflow-wrap: anywhere; }
table { border-collapse: collapse; font-variant-numeric: tabular-nums; width: 100%; }
th, td { text-align: left; vertical-align: top; padding: .25rem .9rem .25rem 0; border-bottom: 1px solid var(--line); }
.scroll { overflow-x: auto; }
.sensors-list { max-height: 17rem; overflow: auto; }
figure { margin: 1rem 0; } figure svg { width: 100%; min-width: 36rem; height: auto; display: block; }
fieldset { border: 1px solid var(--line); padding: .3rem .9rem .7rem; margin: 0 0 1rem; display: flex; flex-wrap: wrap; gap: .2rem 1.6rem; }
fieldset label { display: flex; align-items: center; font-weight: 400; min-height: 2rem; }
article { max-width: 52rem; }
.telling-name { display: none; }
.code { margin: .8rem 0 1rem; max-width: 46rem; }
.code svg { width: 100%; height: auto; display: block; border: 1px solid var(--line); }
.rings-ground { fill: var(--material); } .rings { fill: var(--lit); }
.sensors { stroke: var(--accent); stroke-width: 2; stroke-dasharray: 6 4; fill: none; }
.eye { fill: var(--sheet); stroke: var(--accent); stroke-width: 3; } .eye.aside { fill: var(--accent); }
.says { font-weight: 600; margin: .3rem 0 0; }
.controls { max-width: 46rem; }
.formulas dt { font-weight: 600; margin-top: .9rem; } .formulas dd { margin: 0; } .formulas span, .formulas small { display: block; }
.formula { font-family: ui-monospace, 'DejaVu Sans Mono', monospace; background: var(--sheet); border-left: 4px solid var(--accent); padding: .3rem .7rem; margin: .2rem 0; overflow-wrap: anywhere; }
button { font: inherit; min-height: 2.5rem; padding: .35rem 1rem; margin: 0 .6rem .6rem 0; color: var(--ink); background: var(--sheet); border: 1px solid var(--faint); border-radius: 3px; cursor: pointer; }
summary { cursor: pointer; min-height: 2rem; font-weight: 600; }
.poster { display: none; }
@media (max-width: 46rem) { .turning { grid-template-columns: minmax(0, 1fr); } h1 { font-size: 1.4rem; } }
@page { size: A4 portrait; margin: 12mm; }
@media print {
  :root { --paper: #fff; --sheet: #fff; --ink: #000; --faint: #333; --line: #888; --accent: #8a3712; --lit: #f3d27a; --material: #444; }
  html { background: none; } body { padding: 0; max-width: none; font-size: 10.5pt; }
  * { print-color-adjust: exact; }
  .no-print, .controls { display: none !important; }
  html:not([data-print='all']) main > :not(.poster) { display: none; }
  html:not([data-print='all']) .poster { display: block; }
  html[data-print='all'] .poster { display: none; }
  html[data-print='all'] article { display: block !important; } .telling-name { display: block; }
  section, .formulas dd { break-inside: avoid-page; } .sensors-list { max-height: none; }
  figure svg { min-width: 0; }
  .poster h1 { font-size: 26pt; text-align: center; } .poster .disc svg { display: block; width: 118mm; max-height: 118mm; margin: 4mm auto; }
  .poster .strip svg { width: 100%; height: auto; max-height: 52mm; } .poster .columns { columns: 2; column-gap: 8mm; } .poster p { max-width: none; font-size: 11pt; break-inside: avoid; }
}
`;
