/** What a figure means and who says so. */
export interface Definition {
  readonly id: string;
  readonly term: string;
  readonly meaning: string;
  readonly source: string;
}

/** Definitions of everything that a review shows; the page links each figure to its own. */
export const definitions = {
  period: {
    id: 'period',
    term: 'Ten-minute period',
    meaning:
      'Everything is built from periods of ten minutes, counted from midnight UTC, each named by its end: 12:10 holds what came after 12:00:00 and up to 12:10:00. A time without samples makes no period: no report is not zero wind.',
    source: 'WMO-No. 8, chapter on surface wind, 5.1.1; EPA-454/R-99-005 (2000), section 7.1.',
  },
  heading: {
    id: 'heading',
    term: 'Mean heading',
    meaning:
      'Where the wind comes from, clockwise from true north: the direction of the sum of unit vectors, every reading counting the same, calms left out. 350° and 10° give 0°.',
    source: 'EPA-454/R-99-005 (2000), section 6.2.2; Mardia and Jupp, Directional Statistics (2000).',
  },
  spread: {
    id: 'spread',
    term: 'Spread of direction',
    meaning:
      'Standard deviation of the headings by Yamartino’s single-pass estimator; 103.9° when they come from everywhere. Agreement is the length of the mean unit vector: 1 = always the same, 0 = no direction at all.',
    source:
      'R. J. Yamartino, J. Climate Appl. Meteor. 23 (1984) 1362; within 2 % for distributions that occur, 15 % at worst.',
  },
  speed: {
    id: 'speed',
    term: 'Mean speed',
    meaning: 'Scalar mean of all speeds, calms with them, whatever their direction.',
    source: 'EPA-454/R-99-005 (2000), section 6.2.1.',
  },
  vector: {
    id: 'vector',
    term: 'Vector mean and steadiness',
    meaning:
      'Speed and direction of the mean wind vector, where strong winds count for more. Steadiness is its speed over the scalar mean: 1 = always from one side, 0 = as much from every side.',
    source: 'EPA-454/R-99-005 (2000), section 6.2.2; steadiness is common practice, no source.',
  },
  calm: {
    id: 'calm',
    term: 'Calm',
    meaning:
      'A sample slower than the larger of the speeds at which cups and vane start. A calm has no direction, and is a class of its own; it is never counted as north.',
    source: 'EPA-454/R-99-005 (2000), section 6.2.3.',
  },
  rose: {
    id: 'rose',
    term: 'Rose',
    meaning:
      'Share of the time by sector and speed class. A reading is spread over the angle it really covers, so that the positions of the disc leave no false gaps; a reading at no position of this disc counts as a point. With equal weight, each hour, season or month that has readings counts the same in spite of gaps.',
    source:
      'Sharing by overlap of arcs: derived; the bias it removes: Droppo and Napier, J. Air Waste Manage. Assoc. 58 (2008) 913 (value from memory). Weights: W. G. Cochran, Sampling Techniques (1977), post-stratification (value from memory).',
  },
  missing: {
    id: 'missing',
    term: 'Bounds for missing time',
    meaning:
      'What a share would be had the time without readings been all elsewhere, or all in this sector. It is wide where coverage is low, and says nothing about chance.',
    source: 'C. F. Manski, Amer. Econ. Rev. 80 (1990) 319 (value from memory).',
  },
  interval: {
    id: 'interval',
    term: '95 % interval',
    meaning:
      'How far the figure may be off because only this stretch of weather was seen: worked out by leaving out one group of weeks at a time, so that it holds although one minute is much like the next. It needs two weeks at least. It does not hold faults of the instrument; those are told beside it.',
    source:
      'Delete-a-group jackknife; E. B. Wilson (1927) for shares; Student’s factor: Abramowitz and Stegun 26.7.',
  },
  instrument: {
    id: 'instrument',
    term: 'What the instrument may be off by',
    meaning:
      'A reading is somewhere within its own width; north is as sure as its setting; cups are taken to be within 5 % of the speed unless they were calibrated better. These do not become smaller with more samples, except the width of a reading.',
    source: 'EPA-454/R-99-005 (2000), Table 5-1 (accuracy asked of a system); JCGM 100:2008, 4.3.7.',
  },
  distribution: {
    id: 'distribution',
    term: 'Distribution and Weibull fit',
    meaning:
      'Ten-minute mean speeds in classes of 1 m/s. Shape and scale of the Weibull distribution are fitted by maximum likelihood to the means above 0; their intervals count only as many readings as are independent of each other.',
    source: 'A. C. Cohen, Technometrics 7 (1965) 579.',
  },
  beaufort: {
    id: 'beaufort',
    term: 'Beaufort force',
    meaning: 'Force of each ten-minute mean by the lower bounds of the scale; gusts have no force.',
    source: 'WMO-No. 306, code table 1100.',
  },
  gust: {
    id: 'gust',
    term: 'Gust and gust factor',
    meaning:
      'Highest running mean over 3 s in ten minutes, sliding from sample to sample; it needs three quarters of the samples of a window. The gust factor is the gust over the mean of its ten minutes. Listed gusts are at least two days apart.',
    source: 'WMO-No. 8, 5.1.1; WMO-No. 306 Vol. I.1 Part A, 15.5.5 (3 s).',
  },
  turbulence: {
    id: 'turbulence',
    term: 'Turbulence intensity',
    meaning:
      'Standard deviation of speed within ten minutes over their mean, averaged over the periods. Cups average over their own interval, so the true value is a little higher.',
    source: 'IEC 61400-1 (value from memory).',
  },
  run: {
    id: 'run',
    term: 'Wind run',
    meaning: 'Way of the air past the cups in the time that was measured; gaps add nothing.',
    source: 'Definition: speed times time.',
  },
  power: {
    id: 'power',
    term: 'Power density',
    meaning:
      'Half of air density times the mean cube of speed, with standard air of 1.225 kg/m³. Its uncertainty holds the length of the record, the cups (which count three times) and the air.',
    source: 'P. Jain, Wind Energy Engineering, ch. 3; JCGM 100:2008, 5.1.2.',
  },
  coverage: {
    id: 'coverage',
    term: 'Coverage and completeness',
    meaning:
      'Usable samples over those that the clock expects. A quarter is complete with 90 % of speed, of direction and of both; four complete quarters in a row may stand for a year.',
    source: 'EPA-454/R-99-005 (2000), section 5.3.2.',
  },
  extremes: {
    id: 'extremes',
    term: 'Winds that come back',
    meaning:
      'Highest wind exceeded once in so many years on average, from the highest of each year by a Gumbel distribution. Given only with ten complete years, and up to four times the record.',
    source:
      'E. J. Gumbel, Statistics of Extremes (1958); the limits are common practice, values from memory.',
  },
  quality: {
    id: 'quality',
    term: 'Quality flags',
    meaning:
      'Signs that a sample deserves a look: range, rate, stuck, step, and whether calm and direction go together. They stand beside the data; no sample was deleted or changed for a flag.',
    source:
      'EPA-454/R-99-005 (2000), section 8.6; WMO-No. 8 and its guidelines for automatic stations (values from memory).',
  },
  comparison: {
    id: 'comparison',
    term: 'Comparison by sector',
    meaning:
      'Shares of the time and mean speeds of two records, sector by sector. Where both have the same ten minutes, also how far the other’s heading is turned against this one’s and the quotient of the speeds: a steady turn in every sector is a wrong north, a quotient that dips in some sectors is an obstacle.',
    source: 'Derived; each record with its own 95 % interval from week to week.',
  },
  faults: {
    id: 'faults',
    term: 'Faults and what was left out',
    meaning:
      'Faults that the record shows. Time in which a fault spoils direction or speed is left out of every mean and counted as missing; the samples stay in the store.',
    source: 'docs/faults.md of vanewright.',
  },
  causes: {
    id: 'causes',
    term: 'What would explain the words',
    meaning:
      'Each thing that may be wrong with this very disc, and nothing at all, was worked out: each channel stuck, each two tied or swapped, each window turned round. Shown is what explains the words of the month and their order best, with its share of the odds among all that was tried. A month in which something broke or was mended halfway is told by the larger part of it.',
    source: 'docs/faults.md of vanewright; derived, likelihood of words side by side.',
  },
} as const satisfies Record<string, Definition>;

/** Name of a definition. */
export type DefinitionId = keyof typeof definitions;
