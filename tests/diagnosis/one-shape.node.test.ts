import { expect, it } from 'vitest';
import { defaultDiagnosisParams, diagnose, oneShape } from '../../src/diagnosis/index.js';
import { createRoom, parseRoomSize, type Room } from '../../src/room/index.js';
import { openFile, openRecording, type Recording } from '../../src/signal/index.js';
import { drain } from '../support/drain.js';
import { describeWithRecordings, recordingBytes, recordingNames } from '../support/shared-data.js';

const opened = (names: readonly string[]): Recording[] =>
  names.map((name) => openRecording(recordingBytes(name), { label: name }));

/** What the evidence of one shape says over recordings of one room: of its resonances, and of its ridges. */
function said(name: string, recordings: readonly Recording[], room: Room | null) {
  const { resonances, ridges } = drain(diagnose(recordings, { ...defaultDiagnosisParams, room }));
  const alike = resonances.filter((one) => oneShape(one, resonances)).map(({ frequencyHz }) => frequencyHz);
  const named = ridges.filter(({ cause }) => cause === 'source');
  console.log(
    `one shape, ${name}: ${alike.length} of ${resonances.length} resonances alike (${alike.map((f) => f.toFixed(1)).join(', ') || 'none'}); ` +
      `${named.length} of ${ridges.length} ridges called the source's`,
  );
  return { alike, named, count: resonances.length };
}

/**
 * Loudspeakers of measurement labs have no tail of their own in this band, so that what is called the source's here would be a
 * false alarm. Four sources at one microphone are as good as one source at four: source and microphone may change places.
 */
describeWithRecordings('one shape at every place, in measured rooms', () => {
  const variable = createRoom({ size: parseRoomSize('9.7x5.5x2.7'), speedOfSoundMetresPerSecond: 343 });

  it('is found in no resonance of four corner sources with reflecting walls', () => {
    const { alike, named, count } = said(
      'four corners, reflecting',
      opened(recordingNames.corners),
      variable,
    );
    expect(count).toBeGreaterThan(20);
    expect(alike).toEqual([]);
    expect(named).toEqual([]);
  }, 60_000);

  it('is found in one with absorbing walls, near (2,0,0), which is alike in all four corners; it is not called the source’s', () => {
    const names = recordingNames.absorbentCorners;
    const { alike, named, count } = said('four corners, absorbing', opened(names), variable);
    expect(count).toBeGreaterThan(20);
    // (2,0,0) lies at 35.4 Hz in the rigid box; below 45 Hz these sources put next to nothing, and nothing may be claimed.
    expect(alike.filter((f) => f > 45)).toEqual([]);
    expect(alike.length).toBeLessThanOrEqual(1);
    expect(named).toEqual([]);
  }, 60_000);

  it('is found in no resonance of an office with a loudspeaker in seven directions', async () => {
    const file = recordingBytes('surrey-roomA-5.72x6.64x2.31/UniS_Room_A_BRIR_16k.sofa');
    const recordings: Recording[] = [];
    for (const measurement of [1, 7, 13, 19, 25, 31, 37])
      recordings.push(await openFile(file, { measurement, channel: 1, label: `direction ${measurement}` }));
    const office = createRoom({ size: parseRoomSize('6.64x5.72x2.31') });
    const { alike, named } = said('office, seven directions', recordings, office);
    expect(alike).toEqual([]);
    expect(named).toEqual([]);
  }, 60_000);
});
