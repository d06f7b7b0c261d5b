import type { Instrument } from '../instrument/index.ts';
import { showNumber } from '../units/index.ts';

/** One thing that can hurt, and how it is usually kept from doing so. */
export interface Caution {
  readonly title: string;
  readonly sentences: readonly string[];
  /** Where the numbers come from, or that they are common practice. */
  readonly source: string;
}

/**
 * Distance to keep from overhead lines while a mast is raised. [m]
 *
 * @param mastHeightM - Mast above ground. [m], 0 or more
 * @source US Consumer Product Safety Commission advice, 1.5 times the mast height; not below the 10 ft (3.05 m) of 29 CFR 1910.269.
 */
export function lineClearanceM(mastHeightM: number): number {
  return Math.max(1.5 * mastHeightM, 3.05);
}

const VISIBLE_NM = { from: 400, to: 700 };

/**
 * Most power of a laser that the IEC system calls Class 1, for light that may be looked at for long. [mW]
 *
 * @param wavelengthNm - Wavelength. [nm], 400..1050
 * @source value from memory: IEC 60825-1:2014 table 3; 0.39 mW is confirmed by public summaries (JIS C6802).
 */
export function iecClass1Mw(wavelengthNm: number): number {
  if (wavelengthNm <= 450) return 0.039;
  if (wavelengthNm <= 700) return Math.min(0.39, 0.039 * 10 ** (0.02 * (wavelengthNm - 450)));
  return 0.39 * 10 ** (0.002 * (Math.min(wavelengthNm, 1050) - 700));
}

/** What the classes mean in the two systems that print them. */
function classSystems(wavelengthNm: number): string {
  return (
    `At ${showNumber(wavelengthNm, 0)} nm Class 1 of the IEC system ends at ${showNumber(iecClass1Mw(wavelengthNm), 3)} mW (value from memory); ` +
    'Class I of the US system ends at 0.00039 mW for visible light. A label counts only together with its system and wavelength.'
  );
}

function laserClass(powerMw: number, wavelengthNm: number): string {
  const isVisible = wavelengthNm >= VISIBLE_NM.from && wavelengthNm <= VISIBLE_NM.to;
  if (!isVisible) {
    return (
      `At ${showNumber(wavelengthNm, 0)} nm the eye does not blink away from the beam, and Class 2 does not exist. ` +
      'Treat the module as hazardous whatever its label says.'
    );
  }
  if (powerMw <= 1) {
    return `Up to 1 mW of visible light is Class 2: a glance is ended by the blink, staring is not safe.`;
  }
  if (powerMw <= 5)
    return 'Above 1 mW and up to 5 mW of visible light is Class 3R: direct exposure can harm the eye.';
  return 'Above 5 mW a visible laser is Class 3B or 4: not for a home build.';
}

function lightCautions({ head: { light } }: Instrument): Caution[] {
  if (light.kind === 'led') {
    const infrared: Caution = {
      title: 'Infrared light',
      sentences: ['An infrared LED looks dark while it is on. Do not look into it from close by.'],
      source: 'Common practice; LEDs are judged by IEC 62471.',
    };
    return light.wavelengthNm > VISIBLE_NM.to ? [infrared] : [];
  }
  return [
    {
      title: 'Laser light',
      sentences: [
        laserClass(light.powerMw, light.wavelengthNm),
        classSystems(light.wavelengthNm),
        'Never look into the beam or at its mirror reflection, and never with a lens or binoculars.',
        'Keep the beam inside a closed, light-tight housing; make the laser lose its power when the housing opens; put a label inside.',
        'Pulse it only while reading. Keep it from children.',
        'Cheap modules often give more than is printed on them: an LED does this job too.',
      ],
      source:
        'IEC 60825-1 classes, as quoted in public summaries; the US system (21 CFR 1040.10) has other limits under similar names.',
    },
  ];
}

function makingCautions({ disc, head }: Instrument): Caution[] {
  const printing: Caution = {
    title: 'Printing fumes',
    sentences: [
      'A hot nozzle gives off fine particles and vapours, ABS more than PLA. Air the room and stay out of it.',
    ],
    source: 'US NIOSH science blog, 2018-08-16, and J. Occup. Environ. Hyg. 2017.',
  };
  const cutting: Caution = {
    title: 'Laser cutting',
    sentences: [
      'Never cut PVC or vinyl: the smoke holds chlorine and hydrogen chloride, which harm lungs and machine.',
      'Use the extraction, keep the lid shut, stay beside the machine, have a fire blanket at hand.',
    ],
    source: 'Common practice, no source.',
  };
  const cadmium: Caution = {
    title: 'Photoresistors hold cadmium',
    sentences: ['Do not burn them, do not bin them; hand them in with electronic waste.'],
    source: 'Restricted in the EU by the RoHS directive, 2011/65/EU.',
  };
  return [
    ...(disc.process.kind === 'fdm' ? [printing] : []),
    ...(disc.process.kind === 'laser' ? [cutting] : []),
    ...(head.detector.kind === 'photoresistor' ? [cadmium] : []),
  ];
}

function mastCautions({ site }: Instrument): Caution[] {
  const clearance = showNumber(lineClearanceM(site.mastHeightM), 2);
  return [
    {
      title: 'Power lines',
      sentences: [
        `Keep the mast at least ${clearance} m from any overhead line (1.5 times its height of ${showNumber(site.mastHeightM, 2)} m, never less than 3.05 m).`,
        'Never take a line to be insulated. If the mast begins to fall towards a line, let go of it and stay away.',
      ],
      source: 'US Consumer Product Safety Commission; 29 CFR 1910.269.',
    },
    {
      title: 'Mast and ladder',
      sentences: [
        'Two people, no wind, no wet roof, a ladder that does not conduct, set one out for four up.',
        'A tall mast needs more hands, guys and often a permit.',
      ],
      source: 'US Consumer Product Safety Commission; ladder angle: value from memory (OSHA 1926.1053).',
    },
    {
      title: 'Lightning',
      sentences: [
        'Stop work at the first thunder and stay indoors until 30 minutes after the last.',
        'A metal mast has to be earthed by someone who knows the local rules; earthing does not make a strike safe.',
      ],
      source: 'OSHA/NOAA fact sheet FS-3863; in the US, National Electrical Code 810.',
    },
    {
      title: 'Supply',
      sentences: [
        'Feed the outdoor box from a battery or an isolated extra-low-voltage adapter, with a fuse, and a drip loop in the cable. No mains in the box.',
      ],
      source: 'Common practice, no source.',
    },
  ];
}

/** Said after every list of cautions. */
export const CAUTIONS_DEFER =
  'These are the usual cautions, not a complete list. Local codes and licensed practice decide; where they say otherwise, follow them.';

/** Cautions that apply to this instrument, in the order of the job. */
export function cautionsFor(instrument: Instrument): Caution[] {
  return [...makingCautions(instrument), ...lightCautions(instrument), ...mastCautions(instrument)];
}
