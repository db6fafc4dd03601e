import { expect, fixture, html } from '@open-wc/testing';
import '../../src/define/index.js';
import type { RingdownResponse } from '../../src/elements/response/response.js';
import type { RingdownStudy } from '../../src/elements/study/study.js';
import type { RingdownSpectrogram } from '../../src/elements/spectrogram/spectrogram.js';
import { defaultSweep, makeSweep } from '../../src/signal/sweep.js';
import { encodeWav } from '../../src/signal/wav-write.js';
import { decodeWav } from '../../src/signal/wav.js';
import { convolved, distorted } from '../support/loudspeaker.js';
import { drawn, ready, roomAddress, roomBytes, shadowText, slowHz, waitUntil } from './support.js';

const rate = 8000;
const microphoneText = '20,0 -6,0\n41,9 -3,0\n200 0\n';
const microphone = (text = microphoneText): string => `data:text/plain,${encodeURIComponent(text)}`;
const address = (samples: Float64Array): string => {
  const bytes = encodeWav({ channels: [samples], sampleRate: rate, encoding: 'float-32' });
  return URL.createObjectURL(new Blob([bytes.slice().buffer], { type: 'audio/wav' }));
};

/** A recording of the invented room beside itself, the first with what its template gives. */
const shown = async (recording: unknown, view: unknown): Promise<RingdownStudy> => {
  const study = await fixture<RingdownStudy>(
    html`<ringdown-study no-files>${recording}${view}</ringdown-study>`,
  );
  await ready(study);
  return study;
};

describe('ringdown-recording', () => {
  it('is evidence and no seat where it was made close to its source, at a distance that is one', async () => {
    const recording = (distance: string) =>
      html`<ringdown-recording src=${roomAddress()} near-field=${distance}></ringdown-recording>`;
    const study = await shown(
      html`${recording('')}${recording('0,03')}<ringdown-recording
          src=${roomAddress()}
        ></ringdown-recording>`,
      html`<ringdown-recordings></ringdown-recordings>`,
    );
    expect(study.snapshot.recordings.map(({ nearFieldMetres }) => nearFieldMetres)).to.deep.equal([
      ...[0.05, 0.03, undefined],
    ]);
    expect(study.snapshot.active).to.equal(2);
    const list = study.querySelector('ringdown-recordings')!;
    await waitUntil(() => /near field/.test(shadowText(list, 'table')), 'the list');
    const far = await fixture<RingdownStudy>(
      html`<ringdown-study no-files>${recording('2')}</ringdown-study>`,
    );
    await waitUntil(() => far.shadowRoot!.textContent.includes('near-field'), 'the refusal');
    expect(far.snapshot.recordings).to.have.length(0);
  });

  it('takes the response of its microphone off, calibrates its levels, and every view says so', async () => {
    const study = await shown(
      html`<ringdown-recording
        src=${roomAddress()}
        microphone=${microphone()}
        calibration="114,5"
      ></ringdown-recording>`,
      html`<ringdown-response></ringdown-response><ringdown-spectrogram></ringdown-spectrogram>`,
    );
    const plain = await shown(
      html`<ringdown-recording src=${roomAddress()}></ringdown-recording>`,
      html`<ringdown-response></ringdown-response>`,
    );
    const [recording] = study.snapshot.recordings;
    expect(recording.fullScaleDb).to.equal(114.5);
    expect(recording.microphone?.frequenciesHz).to.deep.equal([20, 41.9, 200]);
    const response = study.querySelector<RingdownResponse>('ringdown-response')!;
    const other = plain.querySelector<RingdownResponse>('ringdown-response')!;
    await waitUntil(() => study.snapshot.responses[0] && plain.snapshot.responses[0], 'responses');
    const levelOf = (of: RingdownStudy): number => {
      const { frequenciesHz, levelsDb } = of.snapshot.responses[0]!;
      return levelsDb[frequenciesHz.findIndex((f) => f >= slowHz)];
    };
    expect(levelOf(study) - levelOf(plain)).to.be.closeTo(3, 0.2);
    await Promise.all([drawn(response), drawn(other)]);
    expect(shadowText(response, 'figcaption')).to.match(
      /by the calibration given.*Response of the microphone taken off/,
    );
    expect(shadowText(other, 'figcaption')).not.to.match(/calibration given|microphone/);
    const fall = study.querySelector<RingdownSpectrogram>('ringdown-spectrogram')!;
    expect(shadowText(fall, 'figcaption')).to.match(/dB re 20 µPa by the calibration given/);
    expect(shadowText(fall, 'figcaption')).to.contain('response of the microphone taken off');
    const codes = study.snapshot.diagnosis!.files[0].notes.map(({ code }) => code);
    expect(codes).to.include.members(['microphone', 'calibrated']);
  });

  it('says in one sentence what is wrong with a microphone, a calibration or a sweep', async () => {
    const cases: [unknown, string][] = [
      [
        html`<ringdown-recording
          src=${roomAddress()}
          microphone=${microphone('a letter')}
        ></ringdown-recording>`,
        'microphone-none',
      ],
      [
        html`<ringdown-recording src=${roomAddress()} calibration="loud"></ringdown-recording>`,
        'attribute-number',
      ],
      [
        html`<ringdown-recording src=${roomAddress()} microphone="/gone.txt"></ringdown-recording>`,
        'fetch-status',
      ],
      [
        html`<ringdown-recording src=${roomAddress()} sweep=${roomAddress()}></ringdown-recording>`,
        'sweep-not-exponential',
      ],
    ];
    for (const [recording, code] of cases) {
      const study = await fixture<RingdownStudy>(
        html`<ringdown-study no-files>${recording}</ringdown-study>`,
      );
      await waitUntil(() => study.feed.failures.length > 0, code, { timeout: 15000 });
      expect(study.feed.failures.map((failure) => failure.code)).to.deep.equal([code]);
      expect(shadowText(study, '.messages')).to.match(/\.$/);
    }
  });

  it('works the impulse response out of the recording of a sweep, as the command does', async () => {
    const law = { ...defaultSweep, sampleRate: rate, seconds: 4, toHz: 800 };
    const [response] = decodeWav(new Uint8Array(roomBytes())).channels;
    const heard = convolved(distorted(law, [0.03, 0.01]), response);
    const study = await shown(
      html`<ringdown-recording src=${address(heard)} sweep=${address(makeSweep(law))}></ringdown-recording>`,
      html`<ringdown-response></ringdown-response>`,
    );
    const [recording] = study.snapshot.recordings;
    expect(recording.sweep?.hash).to.match(/^[0-9a-f]{64}$/);
    expect(recording.notes.map(({ code }) => code)).to.include('swept');
    const [ridge] = study.snapshot.diagnosis!.ridges;
    expect(ridge.frequencyHz).to.be.closeTo(slowHz, 0.1);
    expect(ridge.decayTimeSeconds!).to.be.closeTo(1.3, 0.03);
    const view = study.querySelector<RingdownResponse>('ringdown-response')!;
    await drawn(view);
    expect(shadowText(view, 'figcaption')).to.contain('Worked out of a recorded sweep');
  });

  it('takes the bytes of all three from a script', async () => {
    const law = { ...defaultSweep, sampleRate: rate, seconds: 4, toHz: 800 };
    const study = await fixture<RingdownStudy>(html`<ringdown-study no-files></ringdown-study>`);
    const recording = document.createElement('ringdown-recording');
    const [response] = decodeWav(new Uint8Array(roomBytes())).channels;
    const wav = (samples: Float64Array): ArrayBuffer =>
      encodeWav({ channels: [samples], sampleRate: rate, encoding: 'float-32' }).slice().buffer;
    recording.data = wav(convolved(makeSweep(law), response));
    recording.sweepData = wav(makeSweep(law));
    recording.microphoneData = new Blob([microphoneText]);
    study.append(recording);
    await ready(study);
    const [read] = study.snapshot.recordings;
    expect(read.sweep).not.to.equal(undefined);
    expect(read.microphone?.levelsDb).to.deep.equal([-6, -3, 0]);
  });
});
