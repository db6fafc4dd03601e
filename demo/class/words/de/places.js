export const places = {
  title: 'Quelle und Hörplatz',
  aim: 'Eine Mode ist zu hören, wo die Quelle sie anregen kann und das Ohr in ihrem Druck liegt. Jedes von beiden kann auf einem Knoten sitzen; dann ist von ihr nichts zu hören.',
  questions: [
    {
      question:
        'Die Quelle steht in einer Ecke. Sie sitzen in der Mitte der Breite. Wie hören Sie die tiefste Mode der Breite?',
      options: ['Am lautesten von allen Orten.', 'Halb so laut wie in der Ecke.', 'Kaum.'],
      because: ({ places: { widthHz } }, n) =>
        `Die Mitte der Breite ist der Knoten von (0,1,0), im Aufnahmeraum bei ${n.hz(widthHz)}: Die Quelle regt sie an, aber Ihre Ohren sind dort, wo sie keinen Druck hat. Kein Grat an diesem Platz heißt nicht, dass der Raum keine Mode hat.`,
    },
    {
      question:
        'Nun setzen Sie sich in die Ecke, und die Quelle kommt in die Mitte der Breite. Was hören Sie von dieser Mode?',
      options: [
        'Jetzt ist sie laut: Sie sitzen in der Ecke.',
        'Wieder kaum etwas.',
        'Doppelt so viel wie vorher.',
      ],
      because: () =>
        'Quelle und Ohr dürfen die Plätze tauschen, und nichts ändert sich: Der Pegel folgt der Form der Mode an der Quelle mal der am Hörplatz. Eine Quelle auf einem Knoten kann die Mode nicht anregen.',
    },
    {
      question:
        'Zwei gleiche Quellen stehen an den beiden Seitenwänden und spielen dasselbe. Was wird aus dieser Mode?',
      options: [
        'Sie verschwindet beinahe.',
        'Sie verdoppelt sich: zwei Quellen, doppelte Anregung.',
        'Sie bleibt wie mit einer Quelle.',
      ],
      because: ({ places: { left, right, widthHz } }, n) =>
        `Die Welle hat an den beiden Seiten entgegengesetzte Vorzeichen: ${n.number(left, 2)} an der einen Quelle und ${n.number(right, 2)} an der anderen; ihre Anregungen heben sich auf. Wird eine umgepolt, so verdoppelt sich die Mode stattdessen; dasselbe tut eine Verzögerung um ihre halbe Periode, ${n.number(500 / widthHz)} ms.`,
    },
  ],
  tasks: ({ room, places: { widthHz } }, n) => [
    `Ziehen Sie den Hörplatz quer durch den Raum (oder wählen Sie ihn an und nehmen Sie die Pfeiltasten) und suchen Sie, wo (0,1,0) schweigt: bei der Hälfte von ${n.number(room.split('x')[1])} m.`,
    'Setzen Sie den Hörplatz zurück an die Wand und ziehen Sie stattdessen die Quelle in die Mitte.',
    `Darunter zwei Quellen an den beiden Seitenwänden: Sehen Sie sich die Summe nahe ${n.hz(widthHz, 0)} an, polen Sie dann eine um, nehmen Sie das zurück und verzögern Sie eine um 5 und um ${n.number(500 / widthHz, 0)} ms.`,
  ],
  seat: 'Platz',
  source: 'Quelle',
  desk: 'Pult',
  sides: { left: 'links', right: 'rechts' },
  one: 'Eine Quelle und ein Hörplatz',
  two: 'Zwei Quellen an einem Hörplatz',
};
