export const kinds = {
  title: 'Axial, tangential, oblique',
  aim: 'Drei Arten von Moden, unterschieden danach, zwischen wie vielen Wandpaaren sie laufen, und wie lange jede im selben Raum nachklingt.',
  questions: [
    {
      question:
        'Alle sechs Wände absorbieren gleich, ein Zehntel dessen, was auf sie trifft. Welche Art von Mode klingt am längsten nach?',
      options: [
        'Axial: zwischen einem Wandpaar.',
        'Tangential: zwischen zwei Wandpaaren.',
        'Oblique: zwischen allen dreien.',
        'Keine: Die Wände sind gleich, also klingen alle gleich lange.',
      ],
      because({ kinds: { decays } }, n) {
        const of = (order) => n.seconds(decays.find((one) => one.order.join() === order).seconds);
        return `Eine Mode verliert an jeder Wand Energie, an den Wänden, zwischen denen sie läuft, doppelt so viel wie an denen, die sie nur streift (Morse und Bolt 1944). In 5 × 4 × 3 m mit 0,1 auf allen Wänden klingt (1,0,0) ${of('1,0,0')} nach, (1,1,0) ${of('1,1,0')} und (1,1,1) ${of('1,1,1')}.`;
      },
    },
    {
      question:
        'Wie viel länger klingt in einem Würfel mit solchen Wänden eine axiale Mode nach als eine oblique?',
      options: ['Dreimal so lange.', 'Um die Hälfte länger.', 'Genauso lange.'],
      because: ({ kinds: { cubeAxial, cubeTangential } }, n) =>
        `Axial zu tangential zu oblique verhält sich wie ${n.number(cubeAxial)} zu ${n.number(cubeTangential)} zu 1: Von den drei Wandpaaren zahlt eine axiale Mode an einem den doppelten Preis, eine oblique an allen dreien.`,
    },
    {
      question:
        'Zwei Moden haben dieselbe Güte Q = 16, eine bei 32 Hz und eine bei 125 Hz. Welche klingt länger nach?',
      options: [
        'Die bei 32 Hz, etwa viermal so lange.',
        'Die bei 125 Hz, etwa viermal so lange.',
        'Beide gleich lange: Gleiche Güte heißt gleiches Abklingen.',
      ],
      because: ({ kinds: { q16 } }, n) =>
        `Die Güte zählt Schwingungen, das Ohr hört Sekunden: Die Abklingzeit ist 2,1988 Q / f. Q = 16 sind ${q16.map((one) => `${n.seconds(one.seconds)} bei ${n.hz(one.frequencyHz, 0)}`).join(', ')}.`,
    },
  ],
  tasks: () => [
    'Gehen Sie die Moden durch und zählen Sie die Knotenlinien: in einer Richtung axial, in zweien tangential, in dreien oblique.',
    'Lesen Sie unter dem Bild, wie lange jede voraussichtlich nachklingt, und ordnen Sie die drei Arten.',
    'Hören Sie eine Mode allein, erst (1,0,0) und dann (1,1,1): Drehen Sie zuerst leiser; sie beginnt stumm.',
    'Vergleichen Sie in der Modentabelle Q und Abklingzeit: Was von beiden fällt mit der Frequenz?',
  ],
  seat: 'Platz in der Ecke',
  source: 'Quelle in der Ecke',
  mode: 'Mode',
};
