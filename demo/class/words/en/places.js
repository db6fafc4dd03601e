export const places = {
  title: 'Source and seat',
  aim: 'A mode is heard where the source can drive it and the ear lies in its pressure. Either may sit on a node, and then nothing is heard of it.',
  questions: [
    {
      question:
        'The source stands in a corner. You sit halfway across the width. How do you hear the lowest mode of the width?',
      options: ['Loudest of all places.', 'Half as loud as in the corner.', 'Hardly at all.'],
      because: ({ places: { widthHz } }, n) =>
        `Half the width is the node of (0,1,0), ${n.hz(widthHz)} in the live room: the source drives it, but your ears are where it has no pressure. No ridge at this seat does not mean no mode in the room.`,
    },
    {
      question:
        'Now you take the corner and the source goes to the middle of the width. What do you hear of that mode?',
      options: [
        'Now it is loud: you sit in the corner.',
        'Hardly anything again.',
        'Twice as much as before.',
      ],
      because: () =>
        'Source and ear may change places and nothing changes: the level goes with the shape at the source times the shape at the seat. A source on a node cannot drive the mode.',
    },
    {
      question: 'Two equal sources stand at the two side walls and play the same. What becomes of that mode?',
      options: [
        'It all but vanishes.',
        'It doubles: two sources, twice the drive.',
        'It stays as it was with one.',
      ],
      because: ({ places: { left, right, widthHz } }, n) =>
        `The wave has opposite signs at the two sides: ${n.number(left, 2)} at one source and ${n.number(right, 2)} at the other, so their drives cancel. Turn one of them over and the mode doubles instead; so does a delay of half its period, ${n.number(500 / widthHz)} ms.`,
    },
  ],
  tasks: ({ room, places: { widthHz } }, n) => [
    `Drag the seat across the width (or focus it and use the arrow keys) and find where (0,1,0) is silent: half of ${n.number(room.split('x')[1])} m.`,
    'Put the seat back beside the wall, and drag the source to the middle instead.',
    `Below, two sources at the two side walls: look at the sum near ${n.hz(widthHz, 0)}, then invert one, then take that back and delay one by 5 and by ${n.number(500 / widthHz, 0)} ms.`,
  ],
  seat: 'seat',
  source: 'source',
  desk: 'desk',
  sides: { left: 'left', right: 'right' },
  one: 'One source and one seat',
  two: 'Two sources at one seat',
};
