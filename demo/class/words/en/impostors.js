const options = [
  'A standing wave of the room.',
  'Hum of the mains.',
  'A reflection from a near surface.',
  'A filter that rings by itself.',
  'A decay that the file cut off.',
  'Two decays: a coupled space that gives its sound back slowly.',
];

const question = (name, symptom) => `Recording ${name}. ${symptom} What is it?`;

export const impostors = {
  title: 'Impostors',
  aim: 'Six recordings with something that looks like a mode. One of them is one.',
  questions: [
    {
      question: question(
        'A',
        'It is a straight line at 50 Hz, with its like at 100 and 150 Hz, and it never gets quieter.',
      ),
      options,
      because: () =>
        'A mode decays; hum does not. It is found as a steady line at the end of the recording and at multiples of the mains, and is set aside. At 1 % of the amplitude of a mode of 0.5 s it alone makes a T20 of 4 s.',
    },
    {
      question: question(
        'B',
        'At 43.9 Hz it hangs for more than a second; from the middle of the width it is hardly heard.',
      ),
      options,
      because: ({ remedies: { frequencyHz, beforeSeconds } }, n) =>
        `This is the one that is no impostor: (0,1,0) of the live room, ${n.hz(frequencyHz)}, ringing ${n.seconds(beforeSeconds)}. Its level follows the shape of the wave from seat to seat; its frequency and decay stay.`,
    },
    {
      question: question(
        'C',
        'The response has a deep dip at 86 Hz and nothing hangs there. It moves when the source is moved.',
      ),
      options,
      because: ({ impostors: { dipHz } }, n) =>
        `Sound that comes 5.83 ms later cancels at half a period: ${n.hz(dipHz, 0)}. No tail, so no mode. Moving source or seat shifts it; equalisation cannot fill it.`,
    },
    {
      question: question(
        'D',
        'At 50 Hz it rings for a second, in every room and at every seat, since somebody turned up the bass.',
      ),
      options,
      because: ({ impostors: { boostSeconds } }, n) =>
        `A boost of 6 dB with a Q of 16 at 50 Hz rings ${n.seconds(boostSeconds)} by itself. It is the same at every seat: the filter is to be changed, not the room.`,
    },
    {
      question: question('E', 'At 30 Hz the bass stops dead after 0.3 s, everything at the same moment.'),
      options,
      because: () =>
        'A mode of 1.2 s cut at 0.3 s reads a T20 of 0.72 s. What lies past the end is not known and is drawn grey; record at least 2 s.',
    },
    {
      question: question(
        'F',
        'At 45 Hz it falls fast at first and then goes on for a long time, as if through a door.',
      ),
      options,
      because: () =>
        'One frequency, two slopes: 0.3 s early and 1.6 s late here. One decay time does not describe it, so both are told with the stretch they were read from. A neighbouring room or a resonant panel may be the cause.',
    },
  ],
  tasks: () => [
    'Go through the recordings. Before you read the notes, ask of each picture: does it decay, does it peak, does it end?',
    'Then read the notes and the causes in the table of ridges, and hold them against your prediction.',
  ],
  look: 'Look at each before you say what it is.',
  recording: 'Recording',
};
