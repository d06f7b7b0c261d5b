import { look } from '../../report/index.ts';

/** Style of the build sheet: quiet on screen in light and dark, plain black when printed. */
export const sheetStyle = `
:root { color-scheme: light dark; --paper: ${look.paper}; --ink: ${look.ink}; --faint: ${look.faintInk}; --line: ${look.line}; --accent: ${look.accent}; }
@media (prefers-color-scheme: dark) { :root { --paper: #182127; --ink: #e9e5d8; --faint: #a9b3b8; --line: #44525b; --accent: #e59a72; } }
@media print { :root { --paper: #fff; --ink: #000; --faint: #333; --line: #888; --accent: #000; } section { break-inside: avoid; } }
* { box-sizing: border-box; }
body { margin: 0 auto; padding: 1.5rem 1rem 4rem; max-width: 60rem; background: var(--paper); color: var(--ink); font: 1rem/1.5 ${look.font}; }
h1 { font-size: 1.7rem; line-height: 1.2; margin: 0 0 .3rem; }
h2 { font-size: 1.15rem; margin: 2.2rem 0 .6rem; border-top: 1px solid var(--line); padding-top: .8rem; }
p, li { max-width: 44rem; }
.verdict { font-size: 1.15rem; border-left: .35rem solid var(--accent); padding-left: .8rem; }
.faint { color: var(--faint); }
.scroll { overflow-x: auto; }
table { border-collapse: collapse; width: 100%; font-variant-numeric: tabular-nums; }
tbody th { width: 12rem; }
th, td { text-align: left; vertical-align: top; padding: .35rem .9rem .35rem 0; border-bottom: 1px solid var(--line); }
figure { margin: 1rem 0; }
figure svg { width: 100%; height: auto; max-height: 34rem; display: block; }
figcaption { color: var(--faint); font-size: .92rem; margin-top: .3rem; }
.tall svg { max-height: none; }
.cautions { display: grid; grid-template-columns: repeat(auto-fit, minmax(17rem, 1fr)); gap: .8rem; margin: .8rem 0; }
.caution { border: 2px solid var(--accent); padding: .2rem .9rem .6rem; }
.caution p { margin: .35rem 0; }
.caution h3 { margin: .5rem 0 .2rem; font-size: 1rem; }
@media (max-width: 40rem) {
  thead { position: absolute; left: -100vw; }
  tr, td, tbody th { display: block; width: auto; }
  tr { border-bottom: 1px solid var(--line); padding: .5rem 0; }
  th, td { border: 0; padding: 0; }
}
`;
