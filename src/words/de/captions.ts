import type { Sentence } from '../types.js';

/** The German of `en/captions.ts`. */
export const captions: Readonly<Record<string, Sentence>> = {
  method: (p, n) => {
    const window = n.seconds(p.windowSeconds);
    const say: Record<string, string> = {
      sliding: `Gleitendes Hann-Fenster von ${window}`,
      cumulative: `Kumulativ, Einblendung über ${window}`,
      'constant-q': `Konstante Güte, Fenster von ${window} bei ${n.hertz(p.atHz, 0)}`,
    };
    return say[n.text(p.method)] ?? n.text(p.method);
  },
  resolution: (p, n) =>
    p.lowestHz !== undefined && p.lowestHz !== p.highestHz
      ? `trennt Grate im Abstand von ${n.hertz(p.lowestHz)} bis ${n.hertz(p.highestHz)}`
      : `trennt Grate im Abstand von ${n.hertz(p.resolutionHz ?? p.highestHz)}`,
  time: (p, n) =>
    n.text(p.method) === 'cumulative'
      ? 'Zeitnull ist der Einsatz; jeder Schnitt trägt die Zeit seines linken Randes'
      : 'Zeitnull ist der Einsatz; jeder Schnitt trägt die Zeit seiner Fenstermitte',
  level: (p, n) =>
    `relativer Pegel: 0 dB ist der lauteste Punkt des ersten Schnitts (${n.decibels(p.referenceDbFs, 1)} re Vollaussteuerung${typeof p.fullScaleDb === 'number' ? `, nach der angegebenen Kalibrierung ${n.decibels(Number(p.referenceDbFs) + p.fullScaleDb, 1)} re 20 µPa` : ''})`,
  microphone: (p, n) => `Mikrofonfrequenzgang abgezogen${p.label ? ` („${n.text(p.label)}“)` : ''}`,
  swept: (p, n) => `aus einem aufgenommenen Sweep berechnet${p.label ? ` („${n.text(p.label)}“)` : ''}`,
  'window-decay': (p, n) => {
    const alone = `das Fenster allein fällt um 60 dB in ${n.seconds(p.windowDecaySeconds)}`;
    return n.text(p.method) === 'constant-q' ? `${alone} bei ${n.hertz(p.atHz, 0)}` : alone;
  },
  range: (p, n) => `gezeigt werden ${n.decibels(p.rangeDb)}`,
  'data-end': (p, n) =>
    `Schnitte nach ${n.seconds(p.dataEndSeconds)} reichen über das Ende der Aufnahme hinaus`,
  'fit-window': (p, n) =>
    `Angepasst an die Abtastwerte von ${n.seconds(p.fromSeconds, 3)} bis ${n.seconds(p.toSeconds, 2)} nach dem Einsatz`,
  spacing: (p, n) =>
    `zwei gleich starke Moden, die näher als ${n.hertz(p.spacingHz)} beieinander liegen, sind in dieser Aufnahme nicht zu trennen`,
  expected: (p, n) =>
    typeof p.spacingHz === 'number'
      ? `Von dieser Aufnahme vor jeder Anpassung zu erwarten: Zwei Moden, die näher als etwa ${n.hertz(p.spacingHz)} beieinander liegen, sind nicht zu trennen, und die Abklingzeit einer einzeln stehenden ist auf etwa ${n.percent(p.decayShare, Number(p.decayShare) < 0.1 ? 1 : 0)} bekannt.`
      : `Von dieser Aufnahme vor jeder Anpassung zu erwarten: Keine zwei Moden sind zu trennen, wie weit sie auch auseinander liegen${typeof p.decayShare === 'number' ? `, und die Abklingzeit einer einzeln stehenden ist auf etwa ${n.percent(p.decayShare, 0)} bekannt` : ''}.`,
  uncertainty: () => 'Unsicherheiten sind eine Standardabweichung',
  candidates: () =>
    'Die Gewichte sind die Wahrscheinlichkeit jedes Kandidaten; was an 1 fehlt, ist die Wahrscheinlichkeit, dass keiner zutrifft. Wirkliche Wände verschieben Moden um bis zu 5 oder 6 % gegenüber dem schallharten Quader.',
};
