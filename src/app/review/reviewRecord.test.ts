import { describe, expect, it } from 'vitest';
import { memorySampleStore } from '../../adapters/memory/index.ts';
import { nodeFonts } from '../../adapters/nodeFiles/index.ts';
import { startingFile } from '../../core/instrument/index.ts';
import { sampleWith, type Sample } from '../../core/record/index.ts';
import type { InstrumentFiles, OutputFile, OutputFolder } from '../../ports/index.ts';
import { reviewRecord, type Reviewed } from './reviewRecord.ts';
import type { ReviewRequest } from './reviewRequest.ts';

const START_MS = Date.UTC(2026, 2, 1);
const MINUTE_MS = 60_000;

const instrumentFiles = {
  readText: async () => startingFile('jetty vane'),
} as unknown as InstrumentFiles;

const request: ReviewRequest = {
  path: 'jetty.yaml',
  station: 'jetty',
  sinceMs: null,
  untilMs: null,
  against: null,
  sectors: 16,
  equalWeight: 'reading',
  utcOffsetMin: 0,
  calmBelowMPerS: null,
  out: 'out',
};

/** Turns and changes of speed that a lively vane and cups show, five in a round whose means are 0. [deg], [m/s] */
const TURNS = [-22.5, 11.25, 22.5, 0, -11.25];
const CHANGES = [0, 1, -1, 0.5, -0.5];

/** One sample a minute of invented wind: five minutes are one round about 230 degrees and 5 m/s. [min] */
function minutes(
  count: number,
  of: (i: number) => Partial<Sample> = () => ({}),
  station = 'jetty',
  startMs = START_MS,
): Sample[] {
  return Array.from({ length: count }, (_, i) =>
    sampleWith({
      station,
      atMs: startMs + (i + 1) * MINUTE_MS,
      withinMs: 500,
      headingDeg: 230 + TURNS[i % 5]!,
      speedMPerS: 5 + CHANGES[(2 * i) % 5]!,
      stream: 1,
      line: i + 1,
      ...of(i),
    }),
  );
}

async function review(
  samples: readonly Sample[],
  more: Partial<ReviewRequest> = {},
): Promise<Reviewed & { readonly files: readonly OutputFile[] }> {
  const store = memorySampleStore();
  await store.commit({ samples, ledger: [], progress: { log: 'test', seq: 1, state: '' } });
  let files: readonly OutputFile[] = [];
  const output: OutputFolder = {
    async write(_, written) {
      files = written;
      return { paths: written.map(({ path }) => path), removed: [], kept: [], setAside: [], left: [] };
    },
  };
  const reviewed = await reviewRecord(
    { files: instrumentFiles, output, fonts: nodeFonts, store },
    { ...request, ...more },
    new AbortController().signal,
  );
  return { ...reviewed, files };
}

const page = ({ files }: { readonly files: readonly OutputFile[] }): string =>
  files.find(({ path }) => path === 'review.html')!.content as string;

describe('a review', () => {
  it('writes page, sheet, pictures and tables, and links every figure to its definition', async () => {
    const reviewed = await review(minutes(3 * 1440));
    const paths = reviewed.files.map(({ path }) => path);
    expect(paths).toEqual(
      expect.arrayContaining(['review.html', 'review.pdf', 'pictures/rose.svg', 'tables/hours.csv']),
    );
    const html = page(reviewed);
    const targets = new Set([...html.matchAll(/ id="([\w-]+)"/g)].map(([, id]) => id));
    const links = [...html.matchAll(/href="#([\w-]+)"/g)].map(([, id]) => id!);
    expect(links.length).toBeGreaterThan(10);
    expect(links.filter((id) => !targets.has(id))).toEqual([]);
    expect(html.match(/<(section)/g)!.length).toBe(html.match(/What it means, and who says so/g)!.length + 1);
  });

  it('is the same, byte for byte, from the same record', async () => {
    const [first, second] = [await review(minutes(500)), await review(minutes(500))];
    expect(second.files).toEqual(first.files);
  });

  it('calls what falls short by its name', async () => {
    const samples = minutes(1440).filter((_, i) => i % 2 === 0 || i < 60);
    const { reasons } = await review(samples, {
      sinceMs: START_MS,
      untilMs: START_MS + 2 * 1440 * MINUTE_MS,
    });
    expect(reasons).toHaveLength(1);
    expect(reasons[0]).toMatch(/of the time has speed and direction; 90 % are asked for/);
  });
});

describe('a record that tells little', () => {
  it('has no direction when every sample is calm', async () => {
    const reviewed = await review(minutes(100, () => ({ speedMPerS: 0 })));
    expect(reviewed.review.whole.headingDeg).toBeNull();
    expect(reviewed.review.whole.calmShare!.mean).toBe(1);
    expect(page(reviewed)).toContain('Every sample was calm, so there is no direction.');
  });

  it('is reviewed from a single sample', async () => {
    const { review: found } = await review(minutes(1));
    expect(found.whole.headingDeg).toBeCloseTo(207.5, 9);
    expect(found.whole.speed!.mean).toBe(5);
    expect(found.whole.speed!.interval).toBeNull();
    expect(found.distribution!.weibull).toHaveProperty('why');
  });

  it('has a rose of the vane alone without cups', async () => {
    const reviewed = await review(minutes(100, () => ({ speedMPerS: null })));
    expect(reviewed.review.distribution).toBeNull();
    expect(reviewed.review.rose!.calm).toBeNull();
    expect(page(reviewed)).toContain('The record holds no speed');
  });

  it('has neither where nothing could be read', async () => {
    const reviewed = await review(minutes(10, () => ({ headingDeg: null, speedMPerS: null })));
    expect(reviewed.review.rose).toBeNull();
    expect(page(reviewed)).toContain('No sample has a direction that can be used.');
  });

  it('counts years of gap as gap and nothing else', async () => {
    const late = Date.UTC(2029, 2, 1);
    const { review: found } = await review([...minutes(1440), ...minutes(1440, undefined, 'jetty', late)]);
    expect(found.coverage.days).toHaveLength(1097);
    expect(found.whole.speed!.mean).toBeCloseTo(5, 12);
    expect(found.coverage.whole.both).toBeCloseTo(2 / 1097, 4);
  });

  it('is told how to write hostile names', async () => {
    const reviewed = await review(minutes(10, undefined, '<script>alert(1)</script>'), {
      station: null,
    }).catch((error: Error) => error);
    expect(reviewed).not.toBeInstanceOf(Error);
    expect(page(reviewed as Awaited<ReturnType<typeof review>>)).not.toContain('<script>');
  });
});

describe('a comparison', () => {
  const pier = minutes(
    1440,
    (i) => ({ headingDeg: 240 + TURNS[i % 5]!, speedMPerS: 0.8 * (5 + CHANGES[(2 * i) % 5]!) }),
    'pier',
  );

  it('of two stations at the same time tells turn and ratio', async () => {
    const { review: found } = await review([...minutes(1440), ...pier], { against: 'pier' });
    const sector = found.comparison!.sectors.find(({ turnDeg }) => turnDeg !== null)!;
    expect(found.comparison!.together).toBe(144);
    expect(sector.turnDeg!.mean).toBeCloseTo(10, 9);
    expect(sector.speedRatio!.mean).toBeCloseTo(0.8, 12);
  });

  it('of two periods puts their sectors side by side', async () => {
    const april = minutes(1440, (i) => ({ headingDeg: 50 + TURNS[i % 5]! }), 'jetty', Date.UTC(2026, 3, 2));
    const { review: found } = await review([...minutes(1440), ...april], {
      untilMs: Date.UTC(2026, 3, 1),
      against: '2026-04',
    });
    const sums = found.comparison!.sectors.map(({ share, otherShare }) => [share, otherShare]);
    expect(sums.reduce((sum, [share]) => sum + share!, 0)).toBeCloseTo(1, 12);
    expect(
      found.comparison!.sectors.filter(({ share }) => share > 0).every(({ otherShare }) => otherShare === 0),
    ).toBe(true);
  });
});

it('names a clamp that slipped by what a station nearby shows, and from when on', async () => {
  const slipped = (i: number): Partial<Sample> => (i < 17 * 1440 ? {} : { headingDeg: 275 + TURNS[i % 5]! });
  const both = [...minutes(22 * 1440, slipped), ...minutes(22 * 1440, undefined, 'pier')];
  const { review: found } = await review(both, { against: 'pier' });
  const clamps = found.findings.filter(({ kind }) => kind === 'slipped-clamp');
  expect(clamps.map(({ title }) => title)).toEqual([
    'The clamp has slipped: directions turned by 45° against pier',
  ]);
  expect(Math.abs(clamps[0]!.sinceMs - (START_MS + 17 * 1440 * MINUTE_MS))).toBeLessThan(3 * 3_600_000);
  expect(found.whole.headingDeg).toBeCloseTo(230, 0);
});

describe('a request that cannot be answered', () => {
  it.each<[string, Partial<ReviewRequest>, string]>([
    ['for a station that is not there', { station: 'pier' }, 'review/no-station'],
    ['for a time before the record', { untilMs: START_MS + 1 }, 'review/no-samples'],
    ['that ends before it begins', { sinceMs: START_MS + 10, untilMs: START_MS }, 'review/since-after-until'],
    ['against nothing known', { against: 'nobody' }, 'review/against'],
    ['against a day that is none', { against: '2026-02-30' }, 'review/against'],
    ['against a time without samples', { against: '2020' }, 'review/no-samples'],
  ])('%s is refused in words', async (_, more, code) => {
    await expect(review(minutes(100), more)).rejects.toThrow(code);
  });

  it('tells all that is wrong at once', async () => {
    const wrong = { station: 'pier', sinceMs: 10, untilMs: 5, against: 'nobody' };
    await expect(review(minutes(10), wrong)).rejects.toMatchObject({
      problems: [
        { code: 'review/no-station' },
        { code: 'review/since-after-until' },
        { code: 'review/against' },
      ],
    });
  });

  it('of an empty store says how to fill it', async () => {
    await expect(review([])).rejects.toThrow('vanewright log FILE');
  });
});
