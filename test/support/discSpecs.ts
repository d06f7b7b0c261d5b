import { processDefaults, type DiscSpec } from '../../src/core/disc/index.ts';

/** An 80 mm disc to be printed for an invented vane on a boathouse jetty. */
export const jettyDisc: DiscSpec = {
  code: 'reflected-gray',
  codeFile: null,
  codeOptions: {},
  diameterMm: 80,
  bore: { shape: 'd', diameterMm: 5, acrossFlatMm: 4.5 },
  hubDiameterMm: 28,
  thicknessMm: 2,
  webMm: 1.2,
  rimMm: 2.4,
  finest: 'outside',
  windowLevel: 1,
  notch: { widthMm: 2, depthMm: 1.2 },
  process: processDefaults.fdm,
};

/** No index notch, for discs without a rim. */
export const noNotch = { widthMm: 0, depthMm: 0 } as const;

/** Discs of every make whose files are read back. */
export const discKinds: readonly {
  readonly name: string;
  readonly positions: number;
  readonly spec: DiscSpec;
}[] = [
  { name: 'printed Gray, 32 positions', positions: 32, spec: jettyDisc },
  {
    name: 'printed Gray, 10 positions, round bore',
    positions: 10,
    spec: { ...jettyDisc, bore: { shape: 'round', diameterMm: 5 } },
  },
  { name: 'printed binary, 16 positions', positions: 16, spec: { ...jettyDisc, code: 'natural-binary' } },
  {
    name: 'laser-cut Gray, 64 positions',
    positions: 64,
    spec: { ...jettyDisc, diameterMm: 100, thicknessMm: 3, process: processDefaults.laser },
  },
  { name: 'finest track inside', positions: 32, spec: { ...jettyDisc, finest: 'inside' } },
  { name: 'level 0 lets light through', positions: 32, spec: { ...jettyDisc, windowLevel: 0 } },
  { name: 'no web', positions: 32, spec: { ...jettyDisc, webMm: 0 } },
  {
    name: 'no web, no rim, held by ribs',
    positions: 32,
    spec: { ...jettyDisc, webMm: 0, rimMm: 0, notch: noNotch },
  },
  {
    name: 'no web, no rim, level 0',
    positions: 32,
    spec: { ...jettyDisc, webMm: 0, rimMm: 0, windowLevel: 0, notch: noNotch },
  },
  { name: 'one track, half window', positions: 2, spec: { ...jettyDisc, rimMm: 0, notch: noNotch } },
  {
    name: 'film, 256 positions, binary, no web',
    positions: 256,
    spec: { ...jettyDisc, code: 'natural-binary', webMm: 0, process: processDefaults.film },
  },
  {
    name: 'large printed Gray, 1024 positions',
    positions: 1024,
    spec: { ...jettyDisc, diameterMm: 400, hubDiameterMm: 200 },
  },
];
