export const remedies = {
  title: 'Absenken, umstellen oder absorbieren',
  aim: 'Eine Mode bleibt am Pult (Platz A) stehen. Drei Abhilfen, betrachtet vom Pult und vom Sofa (Platz B), wo diese Mode schwach ist.',
  questions: [
    {
      question:
        'Ein Filter vor der Quelle senkt die Mode genau passend ab, gemessen an Platz A. Was tut es an Platz B, wo die Mode schwach war?',
      options: [
        'Nichts: Dort war nichts abzusenken.',
        'Es nimmt dort ebenso viele Dezibel weg.',
        'Es hebt dort den Bass an.',
      ],
      because: ({ remedies: { frequencyHz, cutDb, levelsDb } }, n) =>
        `Ein Filter kennt keine Plätze. Es nimmt ${n.decibels(-cutDb, 1)} bei ${n.hz(frequencyHz)} weg; so ändert sich der Frequenzgang um ${n.decibels(levelsDb.cut.a, 1)} an A und um ${n.decibels(levelsDb.cut.b, 1)} an B, was einen Einbruch lassen kann, wo nichts stehen blieb. Senken Sie ab, was den meisten Plätzen gemeinsam ist (übliche Praxis).`,
    },
    {
      question: 'Stattdessen kommt die Quelle in die Mitte der Breite. Was geschieht mit dieser Mode?',
      options: [
        'Sie wird nicht mehr angeregt und ist an beiden Plätzen fort.',
        'Sie ist an A fort und bleibt an B.',
        'Sie klingt kürzer nach, ist aber gleich laut.',
      ],
      because: ({ remedies: { levelsDb } }, n) =>
        `Eine Quelle auf dem Knoten kann die Mode nicht anregen: Bei ihrer Frequenz ändert sich der Frequenzgang um ${n.decibels(levelsDb.moved.a, 0)} an A und um ${n.decibels(levelsDb.moved.b, 0)} an B; was bleibt, sind andere Moden. Die Mode selbst ist noch im Raum: Eine andere Quelle oder eine zufallende Tür regt sie an.`,
    },
    {
      question: 'Was von den dreien lässt die Mode für jede Quelle und jeden Platz schneller abklingen?',
      options: ['Die Absenkung.', 'Das Umstellen der Quelle.', 'Absorber.', 'Alle drei.'],
      because: ({ remedies: { beforeSeconds, absorbedSeconds, targetSeconds } }, n) =>
        `Absorption ändert den Raum: Aus ${n.seconds(beforeSeconds)} werden ${n.seconds(absorbedSeconds)}, was auch immer ihn anregt. Die Absenkung lässt das, was dieser eine Lautsprecher spielt, in ${n.seconds(targetSeconds)} enden, weil ihre Nullstellen auf den Polen der Mode liegen; einer Bassgitarre im Raum hilft sie nicht. Den Pegel allein zu ebnen verkürzt das Abklingen nicht.`,
    },
    {
      question: 'An Platz B fehlt nun Bass. Jemand hebt um 6 dB an. Was kostet das den Lautsprecher?',
      options: [
        'Etwas mehr Leistung.',
        'Die doppelte Leistung bei gleicher Auslenkung.',
        'Die vierfache Leistung und die doppelte Auslenkung der Membran.',
      ],
      because: () =>
        '6 dB sind die doppelte Amplitude: doppelte Auslenkung und vierfache Leistung. Die Grenzen nennt der Hersteller. Eine Auslöschung kann ein Equalizer überhaupt nicht füllen.',
    },
  ],
  tasks: () => [
    'Probieren Sie jede Abhilfe. Die Zeile darunter sagt, was an beiden Plätzen gelesen wurde.',
    'Vergleichen Sie die Frequenzgänge von A und B bei der Absenkung: Was hat Platz B verloren?',
    'Fügen Sie unten eine passende Absenkung für den Grat bei 43,9 Hz hinzu, während Sie Platz A ansehen. Wählen Sie dann Platz B: Was hat sie dort gekostet?',
    'Hören Sie es an, durch den Raum und mit Ihren Filtern. Drehen Sie zuerst leiser; es beginnt stumm.',
  ],
  names: {
    before: 'Nichts getan',
    cut: 'Abgesenkt, passend für Platz A',
    moved: 'Quelle in der Mitte der Breite',
    absorbed: 'Absorber für diese Mode',
  },
  remedy: 'Abhilfe',
  seat: (letter) => `Platz ${letter}`,
  found: (decay, sd, frequency) => `${decay} ± ${sd} bei ${frequency}`,
  notFound: (frequency) => `keine Resonanz nahe ${frequency} gefunden`,
  ofSeat: (letter, text) => `Platz ${letter}: ${text}`,
  fitted: (name, parts) => `${name}. Hier angepasst, ${parts}.`,
  reading: 'Beide Plätze werden gelesen …',
  own: 'Eigene Filter, an beiden Plätzen',
};
