import { expect } from '@open-wc/testing';
import { encodeWav } from '../../src/signal/index.js';
import { createPool, setWorkerFactory, sharedPool } from '../../src/study/pool.js';
import { createStudy } from '../../src/study/study.js';
import { defaultChoices, gridParamsOf } from '../../src/study/choices.js';
import { addMode } from '../support/signals.js';

const rate = 8000;
const samples = addMode(new Float64Array(2 * rate), rate, 50, 0.8, 0.5, 0.05);
const bytes = encodeWav({ channels: [samples], sampleRate: rate, encoding: 'float-64' });
const workerUrl = new URL('../../src/study/worker.js', import.meta.url);

describe('the pool in a browser', () => {
  afterEach(() => {
    sharedPool().dispose();
    setWorkerFactory(undefined);
  });

  it('computes in the worker beside it, the same as on the main thread', async () => {
    const main = createPool({ routes: [] });
    const pool = sharedPool();
    const results = [];
    for (const one of [pool, main]) {
      const recording = await one.run('open', { bytes, options: { label: 'a' } });
      const grid = await one.run('grid', { recording, grid: gridParamsOf(defaultChoices) });
      const fit = await one.run('fit', {
        recordings: [recording],
        fit: { fromHz: 20, toHz: 200, volumeCubicMetres: null },
      });
      results.push({ recording, grid, fit });
    }
    expect(pool.way).to.equal('sibling');
    expect(main.way).to.equal('main');
    expect(results[0]).to.deep.equal(results[1]);
    expect(results[0].fit.resonances.length).to.be.greaterThan(0);
    main.dispose();
  });

  it('tries the way of the page first, and the others where that fails in any of the three shapes', async () => {
    const text = 'not a worker';
    const silent = URL.createObjectURL(new Blob([''], { type: 'text/javascript' }));
    const broken = URL.createObjectURL(new Blob(['throw new Error("broken")'], { type: 'text/javascript' }));
    const good = () => new Worker(workerUrl, { type: 'module' });
    const bad: [string, () => Worker][] = [
      [
        'throws',
        () => {
          throw new Error(text);
        },
      ],
      ['is not there', () => new Worker('/no/such/worker.js', { type: 'module' })],
      ['is broken', () => new Worker(broken, { type: 'module' })],
      ['is silent', () => new Worker(silent, { type: 'module' })],
    ];
    for (const [name, make] of bad) {
      const routes = [
        { name: 'bad', make },
        { name: 'good', make: good },
      ];
      const pool = createPool({ routes, silenceMilliseconds: 3000 });
      const recording = await pool.run('open', { bytes, options: {} });
      expect(recording.samples.length, name).to.equal(2 * rate);
      expect(pool.way, name).to.equal('good');
      pool.dispose();
    }
    setWorkerFactory(good);
    await sharedPool().run('open', { bytes, options: {} });
    expect(sharedPool().way).to.equal('factory');
  }).timeout(30_000);

  it('computes on the main thread where the page forbids workers, without holding it up', async () => {
    setWorkerFactory(null);
    // The longest time that the page had to wait for its turn: slices are 8 ms, the longest step of the engine is not.
    let longest = 0;
    let last = performance.now();
    const watching = setInterval(() => {
      longest = Math.max(longest, performance.now() - last);
      last = performance.now();
    }, 4);
    const study = createStudy();
    await study.addRecording(bytes.buffer, { label: 'a' });
    const { status, failures, diagnosis } = await study.settled();
    clearInterval(watching);
    expect(sharedPool().way).to.equal('main');
    expect(failures).to.deep.equal([]);
    expect(status).to.equal('ready');
    expect(diagnosis!.resonances.some(({ frequencyHz }) => Math.abs(frequencyHz - 50) < 0.5)).to.equal(true);
    expect(longest).to.be.lessThan(1000);
    study.dispose();
  });

  it('refuses in a worker with the code and the numbers that the engine gave', async () => {
    const refused = sharedPool().run('open', { bytes: bytes.slice(0, 20), options: {} });
    const thrown: unknown = await refused.then(
      () => null,
      (error: unknown) => error,
    );
    expect(thrown).to.have.property('code', 'wav-truncated-header');
    expect(sharedPool().way).to.equal('sibling');
  });
});
