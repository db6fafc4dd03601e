import type { LegendItem } from '../../draw/legend.js';
import { orderName } from '../../sheet/mode-name.js';
import { isNode } from '../../study/mode-readings.js';
import type { StudySnapshot } from '../../study/types.js';
import type { Speaker } from '../../words/index.js';
import { floorAt, levelText, motionText, shapeAt, valueAt } from './chart.js';
import type { Quantity, Spot } from './chart.js';

/** Level and sign of the mode at a point, or how much the air moves there. */
export function spotText(snapshot: StudySnapshot, spot: Spot, quantity: Quantity, speaker: Speaker): string {
  const { pressure, room } = snapshot;
  if (!pressure || !room) return '';
  if (quantity === 'motion') {
    const value = valueAt(pressure, room, spot, 'motion');
    return speaker.view(Number.isNaN(value) ? 'pressure-readout-outside' : 'motion-readout', {
      ...spot,
      level: motionText(value, speaker),
    });
  }
  const shape = shapeAt(pressure, room, spot);
  const node = isNode(snapshot, spot, floorAt(pressure, spot.x, spot.y));
  return speaker.view(Number.isNaN(shape) ? 'pressure-readout-outside' : 'pressure-readout', {
    ...spot,
    level: levelText(shape, node, speaker),
    sign: node ? 'none' : shape > 0 ? 'above' : 'below',
  });
}

export function pressureKey(quantity: Quantity, speaker: Speaker): LegendItem[] {
  const signs: LegendItem[] =
    quantity === 'motion'
      ? [{ sign: 'above', text: speaker.view('key-motion') }]
      : [
          { sign: 'above', text: speaker.view('key-pressure-above') },
          { sign: 'below', text: speaker.view('key-pressure-below') },
          { sign: 'text-line', text: speaker.view('key-node') },
        ];
  return [
    ...signs,
    { sign: 'ring', text: speaker.view('kind-seat') },
    { sign: 'square', text: speaker.view('kind-source') },
  ];
}

export function pressureCaption(
  { pressure, room }: StudySnapshot,
  { quantity, inRoom }: { readonly quantity: Quantity; readonly inRoom: boolean },
  speaker: Speaker,
): string {
  const { order, kind, frequencyHz, decayTimeSeconds } = pressure!.mode;
  return [
    speaker.view('pressure-caption', {
      ...{ inRoom, frequencyHz, order: orderName(order, room!) },
      kind: speaker.term('modeKinds', kind),
    }),
    ...(decayTimeSeconds === null ? [] : [speaker.view('pressure-decay', { decayTimeSeconds })]),
    ...(quantity === 'motion' ? [speaker.view('motion-caption')] : []),
    ...(inRoom ? [speaker.view('pressure-room-caption')] : []),
    speaker.view('pressure-limits'),
  ].join(' ');
}
