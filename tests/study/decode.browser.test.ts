import { expect } from '@open-wc/testing';
import { decodeInPage } from '../../src/elements/shared/page-audio.js';
import { RingdownError } from '../../src/signal/index.js';
import { decodeApart } from '../../src/study/decode.js';
import { setWorkerFactory, sharedPool } from '../../src/study/pool.js';
import { readSofaApart } from '../../src/study/pool/sofa.js';
import { createStudy } from '../../src/study/study.js';
import { flacFile } from '../support/flac.js';
import { addMode } from '../support/signals.js';

const sofa = async () =>
  new Uint8Array(await (await fetch('/tests/fixtures/single-room.sofa')).arrayBuffer());

const codeOf = async (promise: Promise<unknown>): Promise<string> => {
  try {
    await promise;
  } catch (thrown) {
    return thrown instanceof RingdownError ? thrown.code : String(thrown);
  }
  return 'done';
};

describe('files that the engine cannot open by itself', () => {
  afterEach(() => {
    sharedPool().dispose();
    setWorkerFactory(undefined);
  });

  for (const [rate, bits] of [
    [44100, 16],
    [48000, 24],
    [96000, 24],
    [16000, 16],
  ] as const)
    it(`FLAC of ${bits} bits comes at its own ${rate} Hz, sample for sample`, async () => {
      const scale = 2 ** (bits - 1);
      const whole = (f: number) =>
        Array.from(addMode(new Float64Array(rate / 2), rate, f, 0.4, 0.7, 0.05), (v) =>
          Math.round(v * scale),
        );
      const channels = [whole(50), whole(63)];
      const audio = await decodeApart(flacFile(channels, rate, bits), { decoder: decodeInPage });
      expect(audio!.sampleRate).to.equal(rate);
      expect(audio!.channels).to.have.length(2);
      audio!.channels.forEach((samples, i) => {
        expect(samples.length).to.equal(channels[i].length);
        expect(samples.every((v, n) => v === channels[i][n] / scale)).to.be.true;
      });
    });

  it('a study opens a FLAC file with its own hash, rate and channel choice', async () => {
    const rate = 48000;
    const samples = Array.from(addMode(new Float64Array(rate), rate, 50, 0.4, 0.7, 0.05), (v) =>
      Math.round(v * 2 ** 15),
    );
    const silence = samples.map(() => 0);
    const study = createStudy({ decoder: decodeInPage });
    await study.addRecording(flacFile([silence, samples], rate, 16).slice().buffer, { label: 'a' });
    const { recordings, failures } = await study.settled();
    expect(failures).to.deep.equal([]);
    expect(recordings[0]).to.deep.include({ sampleRate: rate, channel: 2, channelCount: 2 });
    expect(recordings[0].hash).to.match(/^[0-9a-f]{64}$/);
    study.dispose();
  });

  it('a FLAC file that is cut short is refused with one sentence, not read in part', async () => {
    const rate = 44100;
    const file = flacFile([Array.from({ length: rate }, (_, i) => i % 100)], rate, 16);
    expect(await codeOf(decodeApart(file.slice(0, 50_000), { decoder: decodeInPage }))).to.equal(
      'container-decode',
    );
    expect(await codeOf(decodeApart(file.slice(0, 30), { decoder: decodeInPage }))).to.equal('flac-header');
  });

  it('AES69 is read in a worker of its own, measurement by measurement, with its places', async () => {
    const study = createStudy({ decoder: decodeInPage });
    for (const measurement of [1, 2])
      await study.addRecording((await sofa()).buffer, { measurement, channel: 2 });
    const { recordings, failures, examinations } = await study.settled();
    expect(failures).to.deep.equal([]);
    expect(recordings.map(({ measurement }) => measurement)).to.deep.equal([1, 2]);
    expect(recordings[0].samples).not.to.deep.equal(recordings[1].samples);
    expect(recordings[1].seat!.x).to.equal(3);
    expect(recordings[1].filePlaces!.roomMetres).to.deep.equal({ x: 5.2, y: 3.9, z: 2.6 });
    expect(examinations).to.have.length(2);
    study.dispose();
  });

  it('an AES69 file that keeps its reader busy is stopped, and the worker ended', async () => {
    let ended = 0;
    const text = 'postMessage({ type: "ready" }); onmessage = () => { for (;;) {} };';
    const address = URL.createObjectURL(new Blob([text], { type: 'text/javascript' }));
    const make = () => {
      const worker = new Worker(address, { type: 'module' });
      const terminate = worker.terminate.bind(worker);
      worker.terminate = () => {
        ended++;
        terminate();
      };
      return worker;
    };
    const begin = performance.now();
    const reading = readSofaApart(await sofa(), { routes: [{ name: 'busy', make }], mostMilliseconds: 600 });
    expect(await codeOf(reading)).to.equal('sofa-slow');
    expect(performance.now() - begin).to.be.lessThan(3000);
    expect(ended).to.equal(1);
    URL.revokeObjectURL(address);
  });

  it('AES69 is refused in one sentence where the page allows no worker, and a broken file likewise', async () => {
    const broken = (await sofa()).slice(0, 3000);
    expect(await codeOf(readSofaApart(broken))).to.equal('sofa-unreadable');
    setWorkerFactory(null);
    expect(await codeOf(readSofaApart(await sofa()))).to.equal('sofa-worker');
  });
});
