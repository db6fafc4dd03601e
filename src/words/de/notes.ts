import type { NumberWords, Sentence, WordParams } from '../types.js';

const given = (p: WordParams, key: string): boolean => typeof p[key] === 'number' && Number.isFinite(p[key]);
const at = (p: WordParams, key: string): number => Number(p[key]);
/** A clause that is said only where its number is known. */
const clause = (p: WordParams, key: string, say: (value: number) => string): string =>
  given(p, key) ? say(at(p, key)) : '';
const plural = (count: number, one: string, many: string): string => (count === 1 ? one : many);
const band = (p: WordParams, n: NumberWords): string =>
  given(p, 'fromHz') && given(p, 'toHz')
    ? ` zwischen ${n.hertz(at(p, 'fromHz'), 0)} und ${n.hertz(at(p, 'toHz'), 0)}`
    : '';

/** The German of `en/notes.ts`. */
export const notes: Readonly<Record<string, Sentence>> = {
  short: (p, n) =>
    `Die Aufnahme ist kurz${clause(p, 'seconds', (s) => `: Sie endet ${n.seconds(s)} nach dem Einsatz`)}${clause(p, 'fallDb', (d) => `; bis dahin ist der Bass um ${n.decibels(d)} gefallen`)}. Langsames Ausschwingen reicht über ihr Ende hinaus; solche Zeiten beruhen auf dem, was da ist, und sind weniger sicher. Nehmen Sie mindestens 2 s auf.`,
  truncated: (p, n) =>
    `Das Ausschwingen wurde abgeschnitten${clause(p, 'atSeconds', (s) => `, und zwar ${n.seconds(s)} nach dem Einsatz`)}${clause(p, 'levelDb', (d) => `, als es noch klang (${n.decibels(d)} re Anfang)`)}, und Stille folgt. Was dahinter liegt, stammt nicht vom Raum; nehmen Sie eine längere Impulsantwort auf, oder exportieren Sie eine.`,
  noisy: (p, n) =>
    `Das Ausschwingen ragt kaum aus dem Rauschen${band(p, n)}${clause(p, 'rangeDb', (d) => `: ${n.decibels(d)} Dynamik in der schlechtesten Terz`)}${clause(p, 'neededDb', (d) => `, erwünscht sind ${n.decibels(d)}`)}. Abklingzeiten sind dort unsicher. Messen Sie noch einmal mit längerem Sweep, mehr Mittelungen oder weniger Störgeräusch.`,
  'no-range': (p, n) =>
    `Zu wenig Dynamik: Die Impulsantwort liegt${band(p, n) || ' im Bass'} ${given(p, 'rangeDb') ? `nur ${n.decibels(at(p, 'rangeDb'))}` : 'zu wenig'} über ihrem eigenen Rauschen oder über dem, was an ihrem Ende bleibt${clause(p, 'neededDb', (d) => `; nötig sind ${n.decibels(d)}`)}, um ein Ausschwingen zu lesen; es wird daher keine Resonanz gemeldet. Messen Sie noch einmal mit längerem Sweep und einer Quelle, die so tief spielt.`,
  clipped: (p, n) =>
    `Die Aufnahme ist übersteuert${clause(p, 'count', (c) => `: ${n.integer(c)} ${plural(c, 'Abtastwert', 'Abtastwerte')} in Folgen desselben Höchstwerts`)}${clause(p, 'lastSeconds', (s) => `, zuletzt ${n.seconds(s, 3)} nach dem Anfang der Datei`)}. Der Beginn des Ausschwingens ist verformt; Pegeln und frühem Abklingen ist nicht zu trauen. Messen Sie noch einmal leiser.`,
  quantised: (p, n) =>
    `Die Abtastwerte sind in Stufen von ${n.integer(p.bits)} Bit ohne Dither gespeichert: Unterhalb einer halben Stufe, ${n.decibels(p.rangeDb)} unter dem Spitzenwert, ist das Ausschwingen als Stille gespeichert${clause(p, 'atSeconds', (s) => `, die ${n.seconds(s)} nach dem Einsatz beginnt`)}. Diese Stille ist nicht die des Raums, und die Dynamik jedes Bandes endet dort. Exportieren Sie mit 24 Bit oder als Gleitkomma.`,
  hum: (p, n) => {
    const lines = typeof p.linesHz === 'string' ? p.linesHz.split(' ').map((f) => n.hertz(Number(f), 1)) : [];
    const where = lines.length > 1 ? `${lines.slice(0, -1).join(', ')} und ${lines.at(-1)}` : lines[0];
    const strongest =
      lines.length > 1
        ? clause(p, 'frequencyHz', (f) => `, am stärksten bei ${n.hertz(f)}`)
        : clause(
            { ...p, frequencyHz: where ? null : p.frequencyHz },
            'frequencyHz',
            (f) => ` bei ${n.hertz(f)}`,
          );
    return `Es brummt${where ? ` bei ${where}` : ''}${strongest}${clause(p, 'levelDb', (d) => ` (${n.decibels(d)} re lauteste Resonanz)`)}${clause(p, 'mainsHz', (f) => `, von einem Netz mit ${n.hertz(f, 0)}`)}: Das klingt nie ab und ist daher keine Raummode. In der Anpassung ist es ausgeklammert. Suchen Sie eine Brummschleife, und messen Sie noch einmal, wenn es einen Grat verdeckt.`;
  },
  'late-energy': (p, n) =>
    `Lange nach dem Anfang gibt es noch einen Schallstoß${clause(p, 'atSeconds', (s) => `, ${n.seconds(s)} nach dem Einsatz`)}${clause(p, 'levelDb', (d) => `, ${n.decibels(d)} re Spitzenwert`)}${clause(p, 'riseDb', (d) => ` und ${n.decibels(d)} über dem, was davor war`)}: nicht das Ausschwingen des Raums, sondern eine Störung oder eine Verzerrung des Sweeps, die ans Ende gefaltet ist. Kein Grat beruht darauf. Messen Sie noch einmal, und trennen Sie bei der Auswertung des Sweeps die Verzerrung ab.`,
  'two-slopes': (p, n) => {
    const where =
      given(p, 'fromHz') && given(p, 'toHz')
        ? `${band(p, n)}`
        : clause(p, 'frequencyHz', (f) => ` bei ${n.hertz(f)}`);
    const stretch = (from: string, to: string): string =>
      given(p, from) && given(p, to) ? ` von ${n.number(at(p, from), 0)} bis ${n.decibels(at(p, to))}` : '';
    const both =
      given(p, 'earlySeconds') && given(p, 'lateSeconds')
        ? `: ${n.seconds(at(p, 'earlySeconds'))}${stretch('earlyFromDb', 'earlyToDb') || ' zuerst'}, ${n.seconds(at(p, 'lateSeconds'))}${stretch('lateFromDb', 'lateToDb') || ' später'}`
        : '';
    const read = `${clause(p, 'bandHz', (f) => `, gelesen in der Terz um ${n.hertz(f, 0)}`)}${
      given(p, 'fitFromSeconds') && given(p, 'fitToSeconds')
        ? `, beide angepasst von ${n.seconds(at(p, 'fitFromSeconds'), 3)} bis ${n.seconds(at(p, 'fitToSeconds'))} nach dem Einsatz`
        : ''
    }`;
    return `Das Ausschwingen${where} knickt${both}${read}. Eine einzige Abklingzeit beschreibt es nicht; ein gekoppelter Raum oder Moden eines Bandes, die verschieden abklingen, können die Ursache sein. Sagen Sie dazu, aus welchem Abschnitt eine Zahl gelesen ist, und sehen Sie auch das späte Ausschwingen an.`;
  },
  'bent-decay': (p, n) =>
    `Das Ausschwingen${clause(p, 'frequencyHz', (f) => ` bei ${n.hertz(f)}`)} knickt: Ein langsamerer Teil bleibt${clause(p, 'levelDb', (d) => `, der ${n.decibels(Math.abs(d))} tiefer beginnt`)}. Farbiges Rauschen oder ein Raum, der sich während der Messung änderte, können das bewirken; er wird daher nicht als eigene Resonanz genannt.`,
  rumble: (p, n) =>
    `Es rumpelt${clause(p, 'toHz', (f) => ` bis ${n.hertz(f, 0)}`)} weit über dem Rauschen der anderen Bänder. Das ist herausgefiltert, und dort wird nichts gelesen. Verkehr, Lüftung und Wind bewirken es; messen Sie ohne sie noch einmal, wenn es auf die tiefsten Moden ankommt.`,
  'channel-chosen': (p) => {
    const channel = String(p.channel ?? 1);
    const of = typeof p.count === 'number' ? ` von ${p.count}` : '';
    const why: Record<string, string> = {
      'only-live': p.loopbacks
        ? ': Er ist der einzige mit Signal, der kein Loopback ist'
        : ': Die anderen sind stumm',
      first: `: ${typeof p.live === 'number' && p.live > 1 ? p.live : 'Mehrere'} haben Signal, und der erste wird genommen, wenn kein anderer genannt ist`,
      asked: ', wie verlangt',
    };
    const several = String(p.loopbacks ?? '').includes(' ');
    const loopbacks = p.loopbackChosen
      ? ' Er sieht nach einem Loopback aus und nicht nach einem Raum.'
      : p.loopbacks
        ? ` ${several ? 'Die Kanäle' : 'Kanal'} ${String(p.loopbacks)} ${several ? 'sehen nach Loopbacks' : 'sieht nach einem Loopback'} aus und nicht nach einem Raum.`
        : '';
    return `Gelesen wird Kanal ${channel}${of}${why[String(p.reason ?? '')] ?? ''}.${loopbacks} Kanäle werden nie summiert; nennen Sie einen anderen, wenn das nicht das Mikrofon ist.`;
  },
  'rate-suspect': (p, n) =>
    `Die Abtastrate ist vielleicht falsch: Alle Resonanzen weichen um ein gemeinsames Verhältnis${clause(p, 'ratio', (r) => ` von ${n.number(r, 3)}`)} ab${given(p, 'labelledRate') && given(p, 'likelyRate') ? `, wie bei Daten mit ${n.integer(at(p, 'likelyRate'))} Hz, die mit ${n.integer(at(p, 'labelledRate'))} Hz bezeichnet sind` : ''}. Ein entsprechend zu groß oder zu klein angegebener Raum sieht genauso aus. Prüfen Sie, wie die Datei exportiert wurde, und den Raum.`,
  'not-finite': (p) =>
    `${p.channels ? `Kanal ${String(p.channels)}` : 'Ein anderer Kanal'} enthält Abtastwerte, die keine Zahlen sind, und wird nicht gelesen. Exportieren Sie die Datei noch einmal, wenn er gebraucht wird.`,
  silent: (p) =>
    typeof p.count === 'number' && p.count > 1
      ? `${p.count} Kanäle sind stumm und werden nicht gelesen.`
      : `Kanal${p.channel === undefined || p.channel === null ? '' : ` ${String(p.channel)}`} ist stumm und wird nicht gelesen.`,
  dc: (p, n) =>
    `Die Abtastwerte liegen neben der Nulllinie${clause(p, 'offset', (o) => `, um ${n.significant(o, 2)} der Vollaussteuerung`)}${clause(p, 'shareOfPeak', (f) => `, das sind ${n.percent(f, 1)} des Spitzenwerts`)}. Dieser Gleichanteil ist kein Schall; er bleibt unterhalb der tiefsten gezeigten Frequenz weg. Stammt er von einem Eingang, so bringen Sie den in Ordnung.`,
  'size-guessed': (p, n) => {
    const why: Record<string, string> = {
      absent: 'Die Datei sagt nicht, wie viele Abtastwerte sie enthält',
      'beyond-end': 'Die Datei sagt, sie enthalte mehr Abtastwerte, als da sind',
      'partial-frame': 'Die Datei endet innerhalb eines Abtastwerts',
    };
    return `${why[n.text(p.reason)] ?? 'Die Größe im Kopf der Datei ist falsch'}; gelesen wurde, was da ist${clause(p, 'readBytes', (b) => ` (${n.integer(b)} Bytes${clause(p, 'declaredBytes', (d) => `; der Kopf nennt ${n.integer(d)}`)})`)}. Wurde sie beim Kopieren abgeschnitten, so kopieren Sie sie noch einmal.`;
  },
  node: (p, n) =>
    `${p.place === 'source' ? 'Die Quelle' : 'Der Hörplatz'}${typeof p.number === 'number' ? ` ${p.number}` : ''} liegt auf oder nahe einem Druckknoten der Mode ${String(p.order ?? '')}${clause(p, 'frequencyHz', (f) => ` (${n.hertz(f)})`)}: Kein Grat hier heißt nicht, dass der Raum keine Mode hat. Messen Sie auch an einem anderen Ort.`,
  'near-field': (p, n) =>
    `Diese Aufnahme entstand dicht an ihrer Quelle (${n.metres(p.metres)}): Sie sagt, was die Quelle selbst tut, und ist kein Hörplatz. Was hier stehen bleibt, ist nicht das, was man im Raum hört.`,
  boundary: (p, n) =>
    `Der Einbruch${clause(p, 'frequencyHz', (f) => ` bei ${n.hertz(f)}`)}${clause(p, 'depthDb', (d) => `, ${n.decibels(d)} tief,`)} klingt nicht nach, wie bei einer Reflexion${clause(p, 'extraMetres', (d) => `, deren Weg ${n.metres(d)} länger ist als der des Direktschalls (${n.metres(d / 2)} bei einer Fläche genau dahinter),`)} und nicht wie bei einer Mode${clause(p, 'explained', (e) => `; eine einzige Reflexion erklärt ${n.percent(e)} der Form des frühen Spektrums`)}. Wird die Quelle oder der Hörplatz verschoben, so wandert er; ein Equalizer kann ihn nicht füllen.`,
  'other-room': (p, n) =>
    `${p.label ? `„${n.text(p.label)}“` : 'Eine Aufnahme'} teilt die Resonanzen der anderen nicht: Sie stammt vielleicht aus einem anderen Raum oder einem anderen Stand der Arbeit. Aus der gemeinsamen Anpassung wurde sie weggelassen.`,
  aligned: (p, n) =>
    `${p.label ? `„${n.text(p.label)}“` : 'Eine Aufnahme'} entstand in anderer Luft: Ihre Resonanzen liegen${clause(p, 'percent', (v) => ` ${n.number(Math.abs(v), 2)} % ${v > 0 ? 'höher' : 'tiefer'}`)} als die der ersten, die hierher gehört${clause(p, 'percent', (v) => `, wie Luft sie macht, die ${n.number(Math.abs(v) / 0.17, 1)} °C ${v > 0 ? 'wärmer' : 'kälter'} ist`)}. Ihre Zeit wurde gedehnt, damit sie zu den anderen passt; Frequenzen sind so genannt, wie die erste sie hat.`,
  'measurement-chosen': (p, n) =>
    `Gelesen wird Messung ${n.integer(p.measurement)} von ${n.integer(p.count)}${p.asked ? ', wie verlangt' : ', die erste, wenn keine andere genannt ist'}.${clause(p, 'delaySeconds', (s) => ` Die Datei verlangt eine Verzögerung von ${n.seconds(s, 4)} vor ihren Abtastwerten, die nicht angefügt wird.`)} Eine Datei mit mehreren Messungen enthält mehrere Aufnahmen; nennen Sie eine andere, um sie zu lesen.`,
  swept: (p, n) => {
    const orders = [
      clause(p, 'secondDb', (d) => `zweite Ordnung ${n.decibels(d)}`),
      clause(p, 'thirdDb', (d) => `dritte Ordnung ${n.decibels(d)}`),
    ].filter(Boolean);
    return `Die Impulsantwort wurde aus einem aufgenommenen Sweep von ${n.significant(p.fromHz)} bis ${n.hertz(p.toHz, 0)} in ${n.seconds(p.seconds, 1)} berechnet; außerhalb dieses Bandes enthält sie nichts. ${orders.length > 0 ? `Verzerrung re Impulsantwort: ${orders.join(', ')}. Sie` : 'Keine Verzerrung ragte aus dem Rauschen; sie'} liegt vor der Impulsantwort und bleibt aus ihr heraus.`;
  },
  microphone: (p, n) =>
    `Der Frequenzgang des Mikrofons ist abgezogen${p.label ? ` („${n.text(p.label)}“` : ' ('}${p.label ? ', ' : ''}${n.integer(p.points)} Punkte von ${n.significant(p.fromHz)} bis ${n.hertz(p.toHz, 0)}): im Bass höchstens ${n.decibels(p.mostDb, 1)}, bei ${n.hertz(p.mostHz)}. Jenseits dieser Enden gilt der Wert am Ende weiter. Pegel ändern sich dadurch, Abklingzeiten nicht; geben Sie die Datei genau dieses Mikrofons an.`,
  calibrated: (p, n) =>
    `Nach der Kalibrierung sind Pegel auch re 20 µPa angegeben: Ein Sinus, der voll aussteuert, steht für ${n.decibels(p.fullScaleDb, 1)}. Das gilt nur für eine Aufnahme mit der Verstärkung der Kalibrierung; einer seither normalisierten Datei ist sie verloren gegangen. Prüfen Sie mit einem Schallpegelmesser nach.`,
  positions: (p, n) => {
    const place = (name: string): string =>
      `(${['X', 'Y', 'Z'].map((axis) => n.number(p[`${name}${axis}`], 2)).join('; ')}) m`;
    const where = `das Mikrofon bei ${place('seat')}, die Quelle bei ${place('source')}${clause(p, 'distanceMetres', (d) => `, ${n.metres(d)} voneinander`)}`;
    const room = ['length', 'width', 'height'].every((side) => given(p, side))
      ? ` Die Datei nennt einen Raum von ${n.number(p.length, 2)} x ${n.number(p.width, 2)} x ${n.metres(at(p, 'height'))}.`
      : '';
    return p.origin === 'corner'
      ? `Die Datei nennt die Orte, von einer unteren Ecke des Raums aus: ${where}.${room} Sie gelten, wenn keine anderen angegeben sind.`
      : `Die Datei nennt die Orte, aber von einem eigenen Ursprung aus und nicht von einer Ecke des Raums: ${where}.${room} Auf die Moden eines Raums werden sie nicht angewandt; geben Sie dafür Hörplatz und Quelle von einer Ecke aus an.`;
  },
};
