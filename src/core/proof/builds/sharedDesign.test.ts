import { describe, expect, it } from 'vitest';
import { handHead, LOG_HEAD } from '../../../../test/support/handHead.ts';
import { buildCode } from '../../codes/index.ts';
import { planDisc, processDefaults } from '../../disc/index.ts';
import { headOfShared, sharedDesign } from './sharedDesign.ts';
import { virtualBuilds } from './virtualBuilds.ts';

describe('a design sent as plain data', () => {
  it('makes the same builds to the last bit, leak, daylight and strobe included', () => {
    for (const family of ['reflected-gray', 'shift-register']) {
      const disc = planDisc(buildCode(family, 30), {
        code: family,
        codeFile: null,
        codeOptions: {},
        diameterMm: 100,
        bore: { shape: 'round', diameterMm: 5 },
        hubDiameterMm: 40,
        thicknessMm: 2,
        webMm: 1.2,
        rimMm: 2.4,
        finest: 'outside',
        windowLevel: 1,
        notch: { widthMm: 2, depthMm: 1.2 },
        process: processDefaults.fdm,
      });
      const head = handHead(disc, {
        spec: { ...LOG_HEAD, leak: { transmittedShare: 0.01, measuredMm: 2 }, daylightShare: 0.02 },
      });
      const sent = JSON.parse(JSON.stringify(sharedDesign(head))) as ReturnType<typeof sharedDesign>;
      const request = { builds: 300, seed: 4, accuracyDeg: 12 };
      expect(virtualBuilds(headOfShared(sent), request)).toEqual(virtualBuilds(head, request));
    }
  });
});
