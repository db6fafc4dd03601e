export const windows = {
  title: 'Drei Fenster, drei Pegelbereiche',
  aim: 'Eine Aufnahme, neun Bilder. Was von dem, was das Bild zeigt, gehört dem Raum, und was dem Bild selbst?',
  questions: [
    {
      question:
        'Ein bloßer Klick, ganz ohne Raum, wird mit Schnitten von 0,3 s (Hann) gezeichnet. Wie lange scheint er zu brauchen, um 60 dB zu fallen?',
      options: ['Gar keine Zeit: Ein Klick ist sofort vorbei.', 'Etwa 0,15 s.', 'Etwa 0,6 s.'],
      because: ({ windows: { clickSeconds } }, n) =>
        `Ein Schnitt, der den Klick noch enthält, zeigt ihn noch. Ein Hann-Fenster, das über einen Impuls gleitet, fällt in 0,49 seiner Länge um 60 dB: bei 0,3 s sind das ${n.seconds(clickSeconds, 3)}. Kein kürzerer Grat besagt etwas.`,
    },
    {
      question:
        'Eine Mode klingt in 0,45 s um 60 dB ab. Das Bild hat einen Pegelbereich von 40 dB. Nach welcher Zeit verschwindet ihr Grat?',
      options: ['Nach 0,3 s.', 'Nach 0,45 s.', 'Nach 0,2 s.'],
      because: ({ windows: { shownSeconds } }, n) =>
        `Der Grat endet, wo die Skala endet: 40 von 60 dB in 0,45 s sind ${n.seconds(shownSeconds)}. Dieselbe Mode sieht mit weniger Bereich kürzer aus und mit mehr länger; darum stehen Pegelbereich und Zeitspanne bei jedem Bild.`,
    },
    {
      question: 'Zwei Moden liegen bei 80 und 83 Hz. Welches Fenster zeigt zwei Grate?',
      options: ['0,1 s: je kürzer, desto schärfer.', '0,3 s.', '0,8 s.', 'Jedes: Es ist dieselbe Aufnahme.'],
      because: ({ windows: { partsSeconds } }, n) =>
        `Zwei Grate trennen sich erst, wenn das Fenster länger ist als etwa 2 geteilt durch ihren Abstand (Hann): ${n.seconds(partsSeconds)} bei 3 Hz. Kürzere Fenster zeigen einen breiten Grat, der schwebt. Das längere Fenster verwischt dafür die Zeit. Die angepassten Abklingzeiten bleiben bei jedem Fenster dieselben: Sie kommen aus den Abtastwerten und nicht aus dem Bild.`,
    },
  ],
  tasks: () => [
    'Suchen Sie in allen drei Bildern den Grat bei 50 Hz: Es ist dasselbe Abklingen. Wo scheint er zu enden?',
    'Ändern Sie den Pegelbereich, für alle drei zugleich, und sehen Sie noch einmal hin.',
    'Sehen Sie sich 80 bis 83 Hz an: Wie viele Grate zeigt jedes Fenster?',
    'Lesen Sie unten die angepassten Abklingzeiten: Der Satz über jedem Bild sagt dasselbe für jedes Fenster.',
  ],
  label: (length, n) => `Fenster von ${n.seconds(length, 1)}`,
  range: 'Pegelbereich',
};
