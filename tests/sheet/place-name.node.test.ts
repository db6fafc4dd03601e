import { describe, expect, it } from 'vitest';
import { placeName } from '../../src/sheet/place-name.js';
import { placesOf } from '../../src/study/places.js';
import type { StudySnapshot } from '../../src/study/types.js';
import { createSpeaker } from '../../src/words/index.js';

const at = (x: number) => ({ x, y: 1, z: 1.2 });
const recordings = [
  { seat: at(1), source: at(3) },
  { seat: at(2), source: at(3) },
] as unknown as StudySnapshot['recordings'];
const list = () => placesOf({ recordings, room: null, places: [{ kind: 'seat', name: 'sofa', at: at(5) }] });

describe('the name of a place', () => {
  it('is what it is called, else its kind and number, also in a list that was made anew', () => {
    const speaker = createSpeaker('en');
    expect(list().map((place) => placeName(place, list(), speaker))).toEqual([
      'sofa',
      'Seat 2',
      'Seat 3',
      'Source 1',
    ]);
  });
});
