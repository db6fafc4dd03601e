import { describe, expect, it } from 'vitest';
import { encodeWav, Rng } from '../../src/signal/index.js';
import { createPool } from '../../src/study/pool.js';
import { createStudy } from '../../src/study/study.js';
import type { Study, StudySnapshot } from '../../src/study/types.js';
import { addMode } from '../support/signals.js';

const rate = 4000;

/** One channel per list of modes, over noise 70 dB down; a channel without modes is silent. */
function file(...channels: (readonly [number, number])[][]): ArrayBuffer {
  return encodeWav({
    channels: channels.map((modes) => {
      const random = new Rng(4);
      const noise = modes.length > 0 ? 1e-4 : 0;
      const samples = new Float64Array(2 * rate).map(() => noise * random.gaussian());
      for (const [f, decay] of modes) addMode(samples, rate, f, decay, 0.3, 0.05);
      return samples;
    }),
    sampleRate: rate,
    encoding: 'float-64',
  }).buffer;
}

async function studyOf(...files: ArrayBuffer[]): Promise<Study> {
  const study = createStudy({ pool: createPool({ routes: [] }) });
  for (const [k, bytes] of files.entries()) await study.addRecording(bytes, { label: `file ${k + 1}` });
  await study.settled();
  return study;
}

const heights = ({ responses }: StudySnapshot): number[] =>
  responses.map((response) => (response ? Math.max(...response.levelsDb) : NaN));

describe('what only some views need', () => {
  it('is computed while somebody needs it, for every recording, and let go after', async () => {
    const study = await studyOf(file([[50, 0.8]]), file([[70, 0.3]]));
    expect(study.snapshot).toMatchObject({ responses: [], ridgeFit: null });
    const letGo = [study.need('responses'), study.need('responses')];
    const snapshot = await study.settled();
    expect(snapshot.responses.length).toBe(2);
    expect(heights(snapshot)[0]).toBeGreaterThan(heights(snapshot)[1]);
    letGo[0]();
    letGo[0]();
    expect(study.snapshot.responses.length, 'the other still needs them').toBe(2);
    for (const end of letGo) end();
    expect(study.snapshot.responses).toEqual([]);
  });

  it('follows a recording that comes later, and the choices', async () => {
    const study = await studyOf(file([[50, 0.8]]));
    study.need('responses');
    await study.addRecording(file([[70, 0.3]]), { label: 'later' });
    const before = await study.settled();
    expect(before.responses.length).toBe(2);
    expect(before.responses[0]!.smoothing).toBe('none');
    study.setChoices({ smoothing: '1/3' });
    const after = await study.settled();
    expect(after.responses.map((one) => one!.smoothing)).toEqual(['1/3', '1/3']);
    expect(heights(after)[0]).toBeLessThan(heights(before)[0] - 3);
    study.setChoices({ axis: 'linear' });
    expect(study.snapshot.responses, 'an axis recomputes nothing').toBe(after.responses);
  });

  it('keeps the same list while nothing in it changes', async () => {
    const study = await studyOf(file([[50, 0.8]]));
    study.need('responses');
    const { responses } = await study.settled();
    study.setCursor({ frequencyHz: 50, timeSeconds: 0.1 });
    study.setChoices({ rangeDb: 30 });
    expect(study.snapshot.responses).toBe(responses);
  });

  it('fits the worst ridge unless another is selected, and tells no work for it', async () => {
    const study = await studyOf(
      file([
        [42, 1.4],
        [63, 0.3],
        [90, 0.9],
      ]),
    );
    study.need('ridgeFit');
    const { ridgeFit, diagnosis } = await study.settled();
    expect(ridgeFit!.target.frequencyHz).toBe(diagnosis!.ridges[0].frequencyHz);
    const seen = new Set<string>();
    study.subscribe(({ status }) => seen.add(status));
    const other = diagnosis!.ridges.length - 1;
    study.selectRidge(other);
    const next = await study.settled();
    expect(next.ridgeFit!.target.frequencyHz).toBe(diagnosis!.ridges[other].frequencyHz);
    expect([...seen]).toEqual(['ready']);
  });

  it('selects by resonance: a flagged one is its ridge, another is none', async () => {
    const study = await studyOf(
      file([
        [42, 1.4],
        [63, 0.3],
      ]),
    );
    study.need('ridgeFit');
    const { diagnosis } = await study.settled();
    const flagged = diagnosis!.ridges[0].resonance!;
    const quiet = diagnosis!.resonances.findIndex(({ frequencyHz }) => Math.abs(frequencyHz - 63) < 0.5);
    expect(
      diagnosis!.ridges.some(({ resonance }) => resonance === quiet),
      'below its limit',
    ).toBe(false);
    study.selectResonance(flagged);
    expect(study.snapshot).toMatchObject({ selectedRidge: 0, selectedResonance: flagged });
    study.selectResonance(quiet);
    expect(study.snapshot).toMatchObject({ selectedRidge: null, selectedResonance: quiet });
    expect((await study.settled()).ridgeFit!.target.frequencyHz).toBeCloseTo(63, 1);
    study.selectRidge(0);
    expect(study.snapshot.selectedResonance).toBe(flagged);
    study.selectRidge(null);
    expect(study.snapshot).toMatchObject({ selectedRidge: null, selectedResonance: null });
  });
});

describe('the channel of a recording', () => {
  it('can be changed without the file at hand; results follow', async () => {
    const study = await studyOf(file([[42, 1.2]], [[83, 1.2]]));
    expect(study.snapshot.recordings[0].channel).toBe(1);
    study.setChannel(0, 2);
    const { recordings, diagnosis } = await study.settled();
    expect(recordings[0].channel).toBe(2);
    expect(diagnosis!.ridges[0].frequencyHz).toBeCloseTo(83, 0);
    expect(study.snapshot.failures).toEqual([]);
  });

  it('stays as it was where the other is refused, with the reason', async () => {
    const study = await studyOf(file([[42, 1.2]], []));
    study.setChannel(0, 2);
    const { recordings, failures, status } = await study.settled();
    expect(recordings[0].channel).toBe(1);
    expect(failures.map(({ code }) => code)).toEqual(['silent']);
    expect(status).toBe('ready');
    study.setChannel(0, 1);
    study.setChannel(5, 1);
    expect(study.snapshot.recordings[0].channel).toBe(1);
  });
});
