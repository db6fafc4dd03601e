export const windows = {
  title: 'Three windows, three ranges',
  aim: 'One recording, nine pictures. What the picture shows is the room’s and what is the picture’s own.',
  questions: [
    {
      question:
        'A bare click, no room at all, is drawn with slices of 0.3 s (Hann). How long does it seem to take to fall 60 dB?',
      options: ['No time at all: a click is over at once.', 'About 0.15 s.', 'About 0.6 s.'],
      because: ({ windows: { clickSeconds } }, n) =>
        `A slice that still holds the click still shows it. A Hann window slid past one impulse falls 60 dB in 0.49 of its length: ${n.seconds(clickSeconds, 3)} for 0.3 s. No ridge shorter than that means anything.`,
    },
    {
      question:
        'A mode decays 60 dB in 0.45 s. The picture has a range of 40 dB. After what time does its ridge vanish?',
      options: ['After 0.3 s.', 'After 0.45 s.', 'After 0.2 s.'],
      because: ({ windows: { shownSeconds } }, n) =>
        `The ridge is cut where the scale ends: 40 of 60 dB of 0.45 s are ${n.seconds(shownSeconds)}. The same mode looks shorter with less range and longer with more, so range and span are printed beside every picture.`,
    },
    {
      question: 'Two modes lie at 80 and 83 Hz. Which window shows two ridges?',
      options: [
        '0.1 s: the shorter, the sharper.',
        '0.3 s.',
        '0.8 s.',
        'Any of them: it is the same recording.',
      ],
      because: ({ windows: { partsSeconds } }, n) =>
        `Two ridges part only where the window is longer than about 2 divided by their distance (Hann): ${n.seconds(partsSeconds)} for 3 Hz. Shorter windows show one broad ridge that beats. The longer window smears time instead. The fitted decay times stay the same under every window: they come from the samples, not from the picture.`,
    },
  ],
  tasks: () => [
    'Find the ridge at 50 Hz in all three pictures: it is the same decay. Where does it seem to end?',
    'Change the range, for all three at once, and look again.',
    'Look at 80 to 83 Hz: how many ridges does each window show?',
    'Read the fitted decay times below: the sentence over each picture tells the same of each window.',
  ],
  label: (length, n) => `window of ${n.seconds(length, 1)}`,
  range: 'Range',
};
