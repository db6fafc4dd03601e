import type { NumberWords, Sentence, WordParams } from '../types.js';

/** Rates of the trade are whole hertz; a broken header may hold anything. */
const rate = (n: NumberWords, value: WordParams[string]): string => `${n.significant(Number(value), 6)} Hz`;
const plural = (count: unknown, one: string, many: string): string => (Number(count) === 1 ? one : many);

/** The German of `en/errors-files.ts`. */
export const fileErrors: Readonly<Record<string, Sentence>> = {
  'file-empty': () => 'Die Datei ist leer: Sie hat kein einziges Byte. Exportieren Sie sie noch einmal.',
  'too-long': (p, n) =>
    `Die Datei ist zu lang: ${n.number(p.seconds, 0)} s in ${n.text(p.channels)} ${plural(p.channels, 'Kanal', 'Kanälen')} sind mehr, als im Speicher gehalten wird. Bei dieser Abtastrate sind höchstens ${n.number(p.limitSeconds, 0)} s möglich; eine Impulsantwort braucht wenige Sekunden.`,
  'too-short': (p, n) =>
    `Die Aufnahme ist zu kurz, um etwas über den Bass zu sagen: Sie dauert ${n.seconds(p.seconds)} (${n.integer(p.samples)} ${plural(p.samples, 'Abtastwert', 'Abtastwerte')}), nötig sind mindestens ${n.seconds(p.neededSeconds)}. Exportieren Sie die ganze Impulsantwort.`,
  'no-samples': () =>
    'Die Datei hat einen Kopf, aber keinen einzigen Abtastwert dahinter. Exportieren Sie sie noch einmal.',
  silent: (p, n) =>
    Number(p.channels) === 1
      ? 'Die Aufnahme ist stumm: Alle Abtastwerte sind gleich. Prüfen Sie, ob der Mikrofonkanal aufgenommen wurde.'
      : `Alle ${n.text(p.channels)} Kanäle sind stumm: Alle Abtastwerte sind gleich. Prüfen Sie, ob der Mikrofonkanal aufgenommen wurde.`,
  'not-finite': (p, n) =>
    `Kanal ${n.text(p.channel)} enthält ${n.integer(p.count)} ${Number(p.count) === 1 ? 'Abtastwert, der keine Zahl ist' : 'Abtastwerte, die keine Zahlen sind'} (den ersten bei ${n.seconds(p.firstSeconds, 3)}); daraus lässt sich nichts berechnen. Exportieren Sie die Datei noch einmal.`,
  'channel-range': (p, n) =>
    `Verlangt wurde Kanal ${n.text(p.channel)}, die Datei hat aber ${n.text(p.count)} ${plural(p.count, 'Kanal', 'Kanäle')}, gezählt ab 1.`,
  'only-loopback': (p, n) =>
    `Alle ${n.text(p.count)} Kanäle sehen nach einem Loopback aus: Bei jedem liegen über 90 % der Energie innerhalb von 2 ms, wie bei einem Kabel und nicht bei einem Raum. Ist einer davon ein sehr trockener Raum, so nennen Sie seinen Kanal.`,
  rate: (p, n) =>
    `Eine Abtastrate von ${rate(n, p.rate)} liegt außerhalb dessen, was gelesen wird (${rate(n, p.lowest)} bis ${rate(n, p.highest)}). Prüfen Sie die Rate, die zu den Abtastwerten angegeben ist.`,
  'lengths-differ': (p, n) =>
    `Kanal ${n.text(p.channel)} hat ${n.integer(p.samples)} Abtastwerte, der erste dagegen ${n.integer(p.expected)}; alle Kanäle müssen gleich lang sein.`,

  'wav-not-riff': (p, n) =>
    `Das ist keine WAV-Datei: Sie beginnt mit „${n.text(p.found)}“, eine WAV-Datei dagegen mit „RIFF“. Exportieren Sie die Impulsantwort als WAV (PCM oder Gleitkomma).`,
  'wav-not-wave': (p, n) =>
    `Das ist eine RIFF-Datei, aber von der Art „${n.text(p.found)}“ und nicht „WAVE“. Exportieren Sie die Impulsantwort als WAV (PCM oder Gleitkomma).`,
  'wav-big-endian': () =>
    'Diese WAV-Datei ist von der seltenen Big-Endian-Art (RIFX), die nicht gelesen wird. Exportieren Sie sie als gewöhnliche WAV-Datei.',
  'wav-truncated-header': (p, n) =>
    `Die Datei endet innerhalb ihres eigenen Kopfes, nach ${n.integer(p.bytes)} ${plural(p.bytes, 'Byte', 'Bytes')}. Sie wurde beim Kopieren abgeschnitten; kopieren oder exportieren Sie sie noch einmal.`,
  'wav-no-format': () =>
    'Die WAV-Datei sagt nicht, was ihre Abtastwerte sind: Der Formatblock („fmt “) fehlt. Exportieren Sie sie noch einmal.',
  'wav-format-short': (p, n) =>
    `Der Formatblock der WAV-Datei hat ${n.integer(p.bytes)} Bytes, nötig sind ${n.integer(p.needed)}; ihre Abtastwerte sind so nicht zu lesen. Exportieren Sie sie noch einmal.`,
  'wav-no-data': () =>
    'Die WAV-Datei hat keine Abtastwerte: Ihr Datenblock fehlt. Exportieren Sie sie noch einmal.',
  'wav-codec-unsupported': (p, n) =>
    `Die Abtastwerte sind als ${n.text(p.codec)} gespeichert (Format ${n.text(p.tag)}), was nicht gelesen wird. Exportieren Sie die Impulsantwort als WAV mit PCM oder Gleitkomma; verlustbehaftete Kompression würde ihr Ausschwingen verfälschen.`,
  'wav-bits': (p, n) =>
    `Abtastwerte von ${n.text(p.bits)} Bit (${n.text(p.encoding) === 'float' ? 'Gleitkomma' : 'ganzzahlig'}) werden nicht gelesen. Gelesen werden ganzzahlige mit 8, 16, 24 oder 32 Bit und Gleitkommawerte mit 32 oder 64 Bit.`,
  'wav-rate': (p, n) =>
    `Die Datei nennt als Abtastrate ${rate(n, p.rate)}; das liegt außerhalb dessen, was gelesen wird (${rate(n, p.lowest)} bis ${rate(n, p.highest)}). Ihr Kopf ist wahrscheinlich beschädigt; exportieren Sie sie noch einmal.`,
  'wav-channels': (p, n) =>
    Number(p.channels) === 0
      ? 'Die Datei sagt, sie habe gar keinen Kanal. Ihr Kopf ist beschädigt; exportieren Sie sie noch einmal.'
      : `Die Datei sagt, sie habe ${n.text(p.channels)} Kanäle; gelesen werden höchstens ${n.text(p.highest)}. Ihr Kopf ist wahrscheinlich beschädigt; exportieren Sie sie noch einmal.`,
  'wav-frame-size': (p, n) =>
    `Der Kopf der Datei widerspricht sich: ${n.text(p.frameBytes)} Bytes je Abtastzeitpunkt passen nicht zu ${n.text(p.channels)} ${plural(p.channels, 'Kanal', 'Kanälen')} mit ${n.text(p.bits)} Bit. Exportieren Sie sie noch einmal.`,
  'container-unread': (p, n) =>
    `Die Datei ist ${n.text(p.container)}, was hier nicht gelesen wird. Exportieren Sie die Impulsantwort als WAV (PCM oder Gleitkomma) oder als Text mit einer oder zwei Spalten.`,
  'container-browser': (p, n) =>
    `Die Datei ist ${n.text(p.container)}, was nur auf einer Seite im Browser gelesen wird. Wandeln Sie sie in WAV um, das dieselben Abtastwerte enthält.`,
  'container-lossy': (p, n) =>
    `Die Datei ist ${n.text(p.container)}; dieses Format lässt gewöhnlich weg, was es für unhörbar hält: Ein daraus gelesenes Ausschwingen wäre nicht das des Raums. Exportieren Sie die Impulsantwort als WAV oder FLAC.`,
  'container-decode': (p, n) =>
    `Dieser Browser konnte die ${n.text(p.container)}-Datei so nicht dekodieren (${n.text(p.detail)}). Wandeln Sie sie in WAV um, das dieselben Abtastwerte enthält.`,
  'flac-header': () =>
    'Die FLAC-Datei beginnt nicht mit Abtastrate und Länge, wie es jede FLAC-Datei tut. Exportieren Sie sie noch einmal.',
  'sofa-unreadable': (p, n) =>
    `Die AES69-Datei (SOFA) ist beschädigt oder so geschrieben, dass sie hier nicht gelesen wird (${n.text(p.detail)}). Speichern Sie sie mit aktueller Software noch einmal, oder exportieren Sie die Impulsantwort als WAV.`,
  'sofa-not': () =>
    'Die Datei ist HDF5, enthält aber keine Impulsantworten, wie AES69 (SOFA) sie anordnet. Exportieren Sie die Impulsantwort als WAV.',
  'sofa-data-type': (p, n) =>
    `Die AES69-Datei (SOFA) enthält Daten der Art „${n.text(p.dataType)}“ und keine Impulsantworten (FIR). Exportieren Sie die Impulsantworten.`,
  'sofa-free-field': (p, n) =>
    `Die AES69-Datei (SOFA, ${n.text(p.conventions)}) sagt, dass im Freifeld gemessen wurde: Darin steckt kein Raum. Wählen Sie eine Datei, die in einem Raum gemessen wurde.`,
  'sofa-measurement': (p, n) =>
    `Die AES69-Datei (SOFA) hat ${n.integer(p.count)} ${plural(p.count, 'Messung', 'Messungen')}; verlangt wurde Nummer ${n.text(p.measurement)}. Gezählt wird ab 1.`,
  'measurement-none': (p, n) =>
    `Verlangt wurde Messung ${n.text(p.measurement)}, aber nur AES69-Dateien (SOFA) enthalten mehrere. Lassen Sie die Angabe weg.`,
  'sofa-slow': (p, n) =>
    `Das Lesen der AES69-Datei (SOFA) wurde nach ${n.number(p.seconds, 0)} s abgebrochen: Sie ist beschädigt oder zu groß, um auf einer Seite gelesen zu werden. Nehmen Sie den Befehl, oder exportieren Sie eine Impulsantwort als WAV.`,
  'sofa-worker': () =>
    'Hier lässt sich kein Worker erzeugen, und eine AES69-Datei (SOFA) wird nur in einem gelesen, der angehalten werden kann. Exportieren Sie die Impulsantwort als WAV, oder nehmen Sie den Befehl.',
  'sofa-apart': () =>
    'Die Datei ist AES69 (SOFA) und braucht einen eigenen Leser: Sie wird von einer Studie, vom Befehl oder von openFile der Rechenbibliothek geöffnet.',
  'text-line': (p, n) =>
    `Zeile ${n.text(p.line)} der Textdatei besteht nicht wie die Zeilen davor aus einer oder zwei Zahlen: „${n.text(p.text)}“. Entfernen Sie sie, oder kennzeichnen Sie sie mit # als Kommentar.`,
  'text-too-large': (p, n) =>
    `Der Text hat ${n.number(p.megabytes, 0)} MB, mehr als als Text gelesen wird (${n.number(p.mostMegabytes, 0)} MB). Exportieren Sie die Impulsantwort als WAV oder weniger Zeilen davon.`,
  'text-columns': (p, n) =>
    `Zeile ${n.text(p.line)} hat ${n.text(p.columns)} Spalten. Eine Textdatei enthält die Amplitude in einer Spalte oder Zeit und Amplitude in zweien.`,
  'text-ambiguous': () =>
    'Die Kommas der Textdatei können Spalten trennen oder Dezimalkommas sein, und nichts sagt, was gilt. Trennen Sie die Spalten mit Semikolons oder Tabulatoren.',
  'text-times-uneven': (p, n) =>
    `Die Zeiten der Textdatei haben keine gleichen Abstände (Zeile ${n.text(p.line)}) und ergeben daher keine Abtastrate. Exportieren Sie die Impulsantwort selbst und nicht ein Diagramm davon.`,
  'text-rate-needed': () =>
    'Die Textdatei hat eine einzige Spalte; ihre Abtastrate muss daneben angegeben werden („rate“), oder es braucht eine Spalte mit Zeiten davor.',
  'file-rate-differs': (p, n) =>
    `Angegeben ist eine Abtastrate von ${rate(n, p.rate)}, die Datei selbst nennt aber ${rate(n, p.found)}. Lassen Sie die Angabe weg, oder berichtigen Sie den Kopf der Datei.`,
  'text-rate-differs': (p, n) =>
    `Angegeben ist eine Abtastrate von ${rate(n, p.rate)}, die Zeiten der Textdatei ergeben aber ${rate(n, p.found)}. Eines von beiden ist falsch.`,
  'sweep-bounds': (p, n) =>
    `Die Angabe ${n.text(p.name)} des Sweeps ist ${n.significant(p.value)}; sie muss zwischen ${n.significant(p.from)} und ${n.significant(p.to)} liegen.`,
  'sweep-not-exponential': () =>
    'Die Sweep-Datei enthält keinen exponentiellen Sweep: Seine Frequenz steigt nicht in jeder Sekunde um dasselbe Verhältnis. Geben Sie die Datei an, die abgespielt wurde; „ringdown sweep“ erzeugt eine.',
  'sweep-rate': (p, n) =>
    `Die Aufnahme hat ${rate(n, p.rate)}, der Sweep ${rate(n, p.sweepRate)}. Nehmen Sie mit der Rate des Sweeps auf, oder erzeugen Sie den Sweep mit der Rate der Aufnahme.`,
  'sweep-recording-short': (p, n) =>
    `Die Aufnahme dauert ${n.seconds(p.seconds)} und damit kürzer als der Sweep selbst (${n.seconds(p.neededSeconds)}). Nehmen Sie auf, bis der Raum nach dem Sweep verstummt ist.`,
  'microphone-none': () =>
    'Die Datei zum Mikrofon enthält keinen Frequenzgang: Es fanden sich weniger als zwei Zeilen mit Frequenz und Pegel. Nötig ist Text, mit der Frequenz in Hz und dem Pegel in dB in jeder Zeile.',
  'microphone-columns': (p, n) =>
    `Zeile ${n.text(p.line)} der Datei zum Mikrofon hat ${n.integer(p.columns)} ${plural(p.columns, 'Spalte', 'Spalten')}. Gelesen werden Frequenz (Hz) und Pegel (dB); eine Phase dahinter wird übergangen.`,
  'microphone-order': (p, n) =>
    `Die Frequenzen in der Datei zum Mikrofon müssen von Zeile zu Zeile steigen; Zeile ${n.text(p.line)} hat ${n.significant(p.frequencyHz)} Hz. Geben Sie die Datei so an, wie sie dem Mikrofon beilag.`,
  'microphone-level': (p, n) =>
    `Zeile ${n.text(p.line)} der Datei zum Mikrofon nennt ${n.significant(p.levelDb)} dB, und kein Mikrofon weicht um mehr als ${n.significant(p.mostDb)} dB ab. Die Pegel müssen in dB bezogen auf die Bezugsfrequenz stehen, nicht als Empfindlichkeit.`,
  'calibration-range': (p, n) =>
    `Nach der Kalibrierung entspricht die Vollaussteuerung ${n.significant(p.fullScaleDb)} dB re 20 µPa; sie muss zwischen ${n.significant(p.lowest)} und ${n.significant(p.highest)} dB liegen. Geben Sie den Schalldruckpegel eines Sinus an, der gerade voll aussteuert.`,
  'write-clips': (p, n) =>
    `Die Abtastwerte erreichen das ${n.significant(p.peak)}-fache der Vollaussteuerung, was ${n.text(p.encoding)} nicht ohne Übersteuern fasst. Schreiben Sie stattdessen eine Gleitkommadatei.`,
  'write-not-finite': (p, n) =>
    `Kanal ${n.text(p.channel)} enthält Abtastwerte, die keine Zahlen sind, und kann nicht geschrieben werden.`,
};
