import { choices, h, hz, seconds, tasks } from './dom.js';

const options = [
  'A standing wave of the room.',
  'Hum of the mains.',
  'A reflection from a near surface.',
  'A filter that rings by itself.',
  'A decay that the file cut off.',
  'Two decays: a coupled space that gives its sound back slowly.',
];

const gallery = [
  [
    'A',
    'It is a straight line at 50 Hz, with its like at 100 and 150 Hz, and it never gets quieter.',
    'class-a.wav',
  ],
  [
    'B',
    'At 43.9 Hz it hangs for more than a second; from the middle of the width it is hardly heard.',
    'class-b.wav',
  ],
  [
    'C',
    'The response has a deep dip at 86 Hz and nothing hangs there. It moves when the source is moved.',
    'class-c.wav',
  ],
  [
    'D',
    'At 50 Hz it rings for a second, in every room and at every seat, since somebody turned up the bass.',
    'class-d.wav',
  ],
  ['E', 'At 30 Hz the bass stops dead after 0.3 s, everything at the same moment.', 'class-e.wav'],
  [
    'F',
    'At 45 Hz it falls fast at first and then goes on for a long time, as if through a door.',
    'class-f.wav',
  ],
];

const reasons = [
  {
    right: 1,
    because: () =>
      'A mode decays; hum does not. It is found as a steady line at the end of the recording and at multiples of the mains, and is set aside. At 1 % of the amplitude of a mode of 0.5 s it alone makes a T20 of 4 s.',
  },
  {
    right: 0,
    because: ({ remedies: { frequencyHz, beforeSeconds } }) =>
      `This is the one that is no impostor: (0,1,0) of the live room, ${hz(frequencyHz)}, ringing ${seconds(beforeSeconds)}. Its level follows the shape of the wave from seat to seat; its frequency and decay stay.`,
  },
  {
    right: 2,
    because: ({ impostors: { dipHz } }) =>
      `Sound that comes 5.83 ms later cancels at half a period: ${hz(dipHz, 0)}. No tail, so no mode. Moving source or seat shifts it; equalisation cannot fill it.`,
  },
  {
    right: 3,
    because: ({ impostors: { boostSeconds } }) =>
      `A boost of 6 dB with a Q of 16 at 50 Hz rings ${seconds(boostSeconds)} by itself. It is the same at every seat: the filter is to be changed, not the room.`,
  },
  {
    right: 4,
    because: () =>
      'A mode of 1.2 s cut at 0.3 s reads a T20 of 0.72 s. What lies past the end is not known and is drawn grey; record at least 2 s.',
  },
  {
    right: 5,
    because: () =>
      'One frequency, two slopes: 0.3 s early and 1.6 s late here. One decay time does not describe it, so both are told with the stretch they were read from. A neighbouring room or a resonant panel may be the cause.',
  },
];

/** One recording at a time in some views, and the buttons that choose it. */
function shown(...views) {
  const recording = h('ringdown-recording', {
    src: `../recordings/${gallery[0][2]}`,
    label: 'Recording A',
  });
  const study = h(
    'ringdown-study',
    { range: 60, to: 160, 'no-files': true, 'no-choices': true },
    recording,
    ...views.map((view) => h(view)),
  );
  const pick = choices(
    'Recording',
    gallery.map(([name, , file]) => [name, [name, file]]),
    ([name, file]) => {
      recording.setAttribute('label', `Recording ${name}`);
      recording.setAttribute('src', `../recordings/${file}`);
    },
  );
  return { study, pick };
}

/** (5) A gallery of impostors. */
export const impostors = {
  id: 'impostors',
  title: 'Impostors',
  aim: 'Six recordings with something that looks like a mode. One of them is one.',
  questions: gallery.map(([name, symptom], k) => ({
    question: `Recording ${name}. ${symptom} What is it?`,
    options,
    answer: (facts) => ({ right: reasons[k].right, because: reasons[k].because(facts) }),
  })),
  /** The responses alone: the other views name what they find. */
  look() {
    const { study, pick } = shown('ringdown-response');
    return h('div', { class: 'look' }, h('p', {}, 'Look at each before you say what it is.'), pick, study);
  },
  tasks() {
    return [
      'Go through the recordings. Before you read the notes, ask of each picture: does it decay, does it peak, does it end?',
      'Then read the notes and the causes in the table of ridges, and hold them against your prediction.',
    ];
  },
  act(facts) {
    const { study, pick } = shown(
      ...['ringdown-spectrogram', 'ringdown-response', 'ringdown-recordings', 'ringdown-ridges'],
    );
    study.dataset.own = 'true';
    return h('div', {}, tasks(...impostors.tasks(facts)), pick, study);
  },
};
