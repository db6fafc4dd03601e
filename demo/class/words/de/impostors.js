const options = [
  'Eine stehende Welle des Raums.',
  'Netzbrummen.',
  'Eine Reflexion an einer nahen Fläche.',
  'Ein Filter, das von selbst nachklingt.',
  'Ein Abklingen, das die Datei abgeschnitten hat.',
  'Zwei Abklingzeiten: ein gekoppelter Raum, der seinen Schall langsam zurückgibt.',
];

const question = (name, symptom) => `Aufnahme ${name}. ${symptom} Was ist das?`;

export const impostors = {
  title: 'Hochstapler',
  aim: 'Sechs Aufnahmen mit etwas, das wie eine Mode aussieht. Eine davon ist eine.',
  questions: [
    {
      question: question(
        'A',
        'Eine gerade Linie bei 50 Hz, mit ihresgleichen bei 100 und 150 Hz, die nie leiser wird.',
      ),
      options,
      because: () =>
        'Eine Mode klingt ab, Brummen nicht. Es zeigt sich als stetige Linie am Ende der Aufnahme und bei Vielfachen der Netzfrequenz und wird beiseitegelassen. Bei 1 % der Amplitude einer Mode von 0,5 s ergibt es allein schon eine T20 von 4 s.',
    },
    {
      question: question(
        'B',
        'Bei 43,9 Hz bleibt es über eine Sekunde stehen; aus der Mitte der Breite ist es kaum zu hören.',
      ),
      options,
      because: ({ remedies: { frequencyHz, beforeSeconds } }, n) =>
        `Das ist die eine, die kein Hochstapler ist: (0,1,0) des Aufnahmeraums, ${n.hz(frequencyHz)}, mit ${n.seconds(beforeSeconds)} Abklingzeit. Ihr Pegel folgt von Platz zu Platz der Form der Welle; Frequenz und Abklingzeit bleiben.`,
    },
    {
      question: question(
        'C',
        'Der Frequenzgang hat einen tiefen Einbruch bei 86 Hz, und dort bleibt nichts stehen. Er wandert, wenn die Quelle verschoben wird.',
      ),
      options,
      because: ({ impostors: { dipHz } }, n) =>
        `Schall, der 5,83 ms später kommt, löscht bei einer halben Periode aus: ${n.hz(dipHz, 0)}. Kein Nachklingen, also keine Mode. Wird die Quelle oder der Hörplatz verschoben, so wandert der Einbruch; ein Equalizer kann ihn nicht füllen.`,
    },
    {
      question: question(
        'D',
        'Bei 50 Hz klingt es eine Sekunde lang, in jedem Raum und an jedem Platz, seit jemand den Bass aufgedreht hat.',
      ),
      options,
      because: ({ impostors: { boostSeconds } }, n) =>
        `Eine Anhebung um 6 dB mit Q = 16 bei 50 Hz klingt von selbst ${n.seconds(boostSeconds)} nach. Sie ist an jedem Platz dieselbe: Zu ändern ist das Filter und nicht der Raum.`,
    },
    {
      question: question('E', 'Bei 30 Hz bricht der Bass nach 0,3 s ab, alles im selben Augenblick.'),
      options,
      because: () =>
        'Eine Mode von 1,2 s, bei 0,3 s abgeschnitten, liest sich als T20 von 0,72 s. Was hinter dem Ende liegt, ist nicht bekannt und grau gezeichnet; nehmen Sie mindestens 2 s auf.',
    },
    {
      question: question(
        'F',
        'Bei 45 Hz fällt es erst schnell und geht dann lange weiter, wie durch eine Tür.',
      ),
      options,
      because: () =>
        'Eine Frequenz, zwei Abklingzeiten: hier 0,3 s früh und 1,6 s spät. Eine einzige beschreibt das nicht; darum stehen beide da, mit der Strecke, aus der sie gelesen sind. Ein Nebenraum oder eine schwingende Platte kann die Ursache sein.',
    },
  ],
  tasks: () => [
    'Gehen Sie die Aufnahmen durch. Fragen Sie jedes Bild, bevor Sie die Hinweise lesen: Klingt es ab, ragt es heraus, hört es auf?',
    'Lesen Sie dann die Hinweise und die Ursachen in der Tabelle der Grate und halten Sie sie gegen Ihre Vorhersage.',
  ],
  look: 'Sehen Sie sich jede an, bevor Sie sagen, was sie ist.',
  recording: 'Aufnahme',
};
