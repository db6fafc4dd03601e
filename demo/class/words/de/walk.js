export const walk = {
  title: 'Den Druck abgehen',
  aim: 'Eine stehende Welle zwischen zwei Wänden: wo sie laut ist, wo sich die Luft bewegt und was die Temperatur mit ihr macht.',
  questions: [
    {
      question:
        'Sie gehen den Aufnahmeraum der Länge nach ab, während seine tiefste Mode klingt. Wo ist der Schalldruck am kleinsten?',
      options: [
        'An beiden Stirnwänden.',
        'In der Mitte zwischen ihnen.',
        'Ein Viertel des Weges von jeder Wand entfernt.',
        'Nirgends: Er ist überall gleich.',
      ],
      because: ({ walk: { firstHz } }, n) =>
        `Jede schallharte Wand ist ein Druckmaximum. Die Welle von (1,0,0), hier ${n.hz(firstHz)}, ist eine halbe Wellenlänge von Wand zu Wand: ein Kosinus, an beiden Enden am größten, mit entgegengesetzten Vorzeichen, und dazwischen null.`,
    },
    {
      question: 'Und wo bewegt sich bei dieser Mode die Luft selbst am stärksten?',
      options: ['In der Mitte zwischen ihnen.', 'An beiden Stirnwänden.', 'Überall gleich.'],
      because: () =>
        'Durch eine schallharte Wand kann sich die Luft nicht bewegen; dort ist die Schnelle null, und am größten ist sie, wo der Druck null ist. Darum bewirkt eine dünne poröse Schicht auf der Wand im Bass wenig: Sie wirkt auf die Schnelle.',
    },
    {
      question: 'Die Heizung wird von 15 auf 25 °C gestellt. Was macht eine Mode bei 50 Hz?',
      options: [
        'Sie bleibt: Die Wände haben sich nicht bewegt.',
        'Sie sinkt um etwa 0,9 Hz.',
        'Sie steigt um etwa 5 Hz.',
        'Sie steigt um etwa 0,9 Hz.',
      ],
      because: ({ walk: { warmerHz, warmerShare } }, n) =>
        `In warmer Luft ist der Schall schneller: 343,2 m/s bei 20 °C, und er wächst mit der Wurzel der absoluten Temperatur (ISO 9613-1). Von 15 auf 25 °C sind das ${n.number(100 * warmerShare)} %, bei 50 Hz also ${n.hz(warmerHz, 2)}.`,
    },
  ],
  tasks: ({ room }, n) => [
    `Gehen Sie mit dem Schieber x von 0 bis ${n.number(room.split('x')[0])} m und beobachten Sie den Pegel und sein Vorzeichen.`,
    'Wählen Sie (2,0,0) und stellen Sie sich wieder in die Mitte. Was ist anders?',
    'Schalten Sie vom Schalldruck auf die Schallschnelle um und gehen Sie noch einmal.',
    'Ändern Sie die Temperatur und lesen Sie die Frequenz der Mode ab.',
  ],
  listener: 'Hörer',
  source: 'Quelle',
  drag: 'Hörer, Quelle und Wände verschieben',
  air: 'Luft',
  airText: (celsius, hertz, n) => `${celsius} °C, (1,0,0) bei ${n.hz(hertz)}`,
};
