import { look } from '../../report/index.ts';

/** Style of the review page: quiet on screen in light and dark, plain when printed. */
export const reviewStyle = `
:root { color-scheme: light dark; --paper: ${look.paper}; --ink: ${look.ink}; --faint: ${look.faintInk}; --line: ${look.line}; --accent: ${look.accent}; }
@media (prefers-color-scheme: dark) { :root { --paper: #182127; --ink: #e9e5d8; --faint: #a9b3b8; --line: #44525b; --accent: #e59a72; } }
@media print { :root { --paper: #fff; --ink: #000; --faint: #333; --line: #888; --accent: #000; } figure, tr, .finding { break-inside: avoid; } }
* { box-sizing: border-box; }
body { margin: 0 auto; padding: 1.5rem 1rem 4rem; max-width: 64rem; background: var(--paper); color: var(--ink); font: 1rem/1.5 ${look.font}; overflow-wrap: break-word; }
h1 { font-size: 1.7rem; line-height: 1.2; margin: 0 0 .3rem; }
h2 { font-size: 1.15rem; margin: 2.2rem 0 .6rem; border-top: 1px solid var(--line); padding-top: .8rem; }
h3 { font-size: 1rem; margin: 1rem 0 .2rem; }
p, li, dd { max-width: 46rem; }
a { color: var(--accent); }
.answer { font-size: 1.15rem; border-left: .35rem solid var(--accent); padding-left: .8rem; }
.faint, figcaption { color: var(--faint); font-size: .92rem; }
.scroll { overflow-x: auto; }
.finding { border: 2px solid var(--accent); padding: .2rem .9rem .6rem; margin: .6rem 0; }
.finding p { margin: .35rem 0; }
table { border-collapse: collapse; width: 100%; font-variant-numeric: tabular-nums; font-size: .9rem; }
th, td { text-align: left; vertical-align: top; padding: .25rem .8rem .25rem 0; border-bottom: 1px solid var(--line); }
td .short { white-space: nowrap; }
@media (max-width: 30rem) { tr:has(> :nth-child(3):last-child) .short { white-space: normal; } }
figure { margin: 1rem 0; overflow-x: auto; }
figure svg { width: 100%; min-width: 30rem; height: auto; max-height: 34rem; display: block; }
dt { font-weight: bold; margin-top: .9rem; } dd { margin: .1rem 0 0; }
:target { background: color-mix(in srgb, var(--accent) 14%, transparent); }
`;
