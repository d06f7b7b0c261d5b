import { buildCode } from '../../codes/index.ts';
import {
  discLayers,
  planDisc,
  processDefaults,
  type DiscForm,
  type DiscPlan,
  type DiscSpec,
  type Process,
} from '../../disc/index.ts';
import { element, look, type Markup } from '../../report/index.ts';
import { showNumber } from '../../units/index.ts';
import { svgPen } from '../svg/svgPen.ts';

/** One picture of the docs. */
export interface FormPicture {
  /** Name of the form; also its file name. */
  readonly name: string;
  readonly svg: string;
}

const COLOURS = ['#f4f4f4', '#202020', '#1f5fbf'] as const;
const BOARD = '#5d7a63';
const PAPER = '#fffdf6';
const MARGIN_MM = 3;

interface Example {
  readonly name: string;
  readonly process: Process['kind'];
  readonly code?: string;
  readonly positions?: number;
  readonly form?: DiscForm;
  readonly strip?: DiscSpec['strip'];
  /** Colour of the blank, and of the pattern where it has no colour of its own. */
  readonly blank: string;
  readonly pattern: string;
}

const examples: readonly Example[] = [
  { name: 'through-cut', process: 'fdm', blank: PAPER, pattern: look.material },
  {
    name: 'relief',
    process: 'laser',
    form: { kind: 'relief', floorMm: 1.5, raised: 'dark' },
    blank: look.material,
    pattern: '#9fb0ba',
  },
  { name: 'overlay', process: 'film', blank: PAPER, pattern: '#000000' },
  {
    name: 'inlay',
    process: 'fdm',
    code: 'ternary-modular',
    positions: 27,
    form: { kind: 'inlay', depthMm: 0.6, colours: COLOURS },
    blank: COLOURS[0],
    pattern: COLOURS[1],
  },
  {
    name: 'copper',
    process: 'pcb',
    form: { kind: 'copper', copper: 'dark' },
    blank: BOARD,
    pattern: '#b9752f',
  },
  {
    name: 'strip',
    process: 'fdm',
    strip: { turnLengthMm: 180, leadMm: 6 },
    blank: PAPER,
    pattern: look.material,
  },
];

/** An invented disc of 60 mm, the same in every form. */
function planOf({ process, code = 'reflected-gray', positions = 32, form, strip }: Example): DiscPlan {
  const spec: DiscSpec = {
    code,
    codeFile: null,
    codeOptions: {},
    diameterMm: 60,
    bore: { shape: 'd', diameterMm: 5, acrossFlatMm: 4.5 },
    hubDiameterMm: 22,
    thicknessMm: 3,
    webMm: 1,
    rimMm: 2.4,
    finest: 'outside',
    windowLevel: 1,
    notch: { widthMm: 2, depthMm: 1.2 },
    process: processDefaults[process],
    ...(form ? { form } : {}),
    ...(strip ? { strip } : {}),
  };
  return planDisc(buildCode(code, positions), spec);
}

function shape(layer: { draw: ReturnType<typeof discLayers>[number]['draw'] }, fill: string): Markup {
  const { pen, pathData } = svgPen();
  layer.draw(pen);
  return element('path', {
    d: pathData(),
    fill,
    'fill-rule': 'evenodd',
    stroke: look.ink,
    'stroke-width': 0.1,
  });
}

function pictureOf(example: Example): string {
  const plan = planOf(example);
  const layers = discLayers(plan);
  const pattern = layers.filter(({ isPattern }) => isPattern);
  const blank = layers.filter(({ operation, isPattern }) => operation === 'cut' && !isPattern);
  const { strip } = plan;
  const half = plan.spec.diameterMm / 2 + MARGIN_MM;
  const box = strip
    ? [
        strip.fromDeg * strip.mmPerDeg - MARGIN_MM,
        -strip.heightMm - MARGIN_MM,
        (strip.toDeg - strip.fromDeg) * strip.mmPerDeg + 2 * MARGIN_MM,
        strip.heightMm + 2 * MARGIN_MM,
      ]
    : [-half, -half, 2 * half, 2 * half];
  return `${
    element(
      'svg',
      {
        xmlns: 'http://www.w3.org/2000/svg',
        viewBox: box.map((side) => showNumber(side, 2)).join(' '),
        role: 'img',
      },
      element('title', {}, `A disc of 60 mm, invented, made as ${example.name}`),
      ...blank.map((layer) => shape(layer, example.blank)),
      ...pattern.map((layer) =>
        shape(layer, layer.fill && example.form?.kind !== 'copper' ? layer.fill : example.pattern),
      ),
    ).html
  }\n`;
}

/**
 * One picture of each form a disc can have, for the docs; all of the same invented disc.
 *
 * @check test/journeys/discForms.test.ts (the pictures in docs/pictures/forms are these)
 */
export function formPictures(): FormPicture[] {
  return examples.map((example) => ({ name: example.name, svg: pictureOf(example) }));
}
