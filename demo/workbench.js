/* global document, customElements */
/**
 * Brings the form and the study together: the study's attributes are the whole interface. The room stays empty for a
 * file of the reader's own until it is typed.
 */
const form = document.querySelector('#inputs');
const study = document.querySelector('#study');
const recording = document.querySelector('#recording');
const list = document.querySelector('#recordings');

const fields = (name) => form.elements.namedItem(name);

function applyRoom() {
  const sides = ['length', 'width', 'height'].map((name) => fields(name).value.trim());
  if (sides.some((side) => side === '')) study.removeAttribute('room');
  else study.setAttribute('room', sides.join(' x '));
  study.setAttribute('temperature', fields('temperature').value);
}

async function choose({ file, label, room, seat, source }) {
  const sides = room.split('x');
  ['length', 'width', 'height'].forEach((name, k) => (fields(name).value = sides[k]));
  applyRoom();
  recording.setAttribute('src', `recordings/${file}`);
  recording.setAttribute('label', label);
  recording.setAttribute('seat', seat);
  recording.setAttribute('source', source);
  await customElements.whenDefined('ringdown-study');
  // Among files of the reader's own, the one just chosen is to be shown.
  study.addEventListener(
    'ringdown-ready',
    () => {
      const index = study.snapshot.recordings.findIndex((known) => known.label === label);
      if (index >= 0) study.study.setActive(index);
    },
    { once: true },
  );
}

form.addEventListener('change', (event) => {
  if (event.target.name in { length: 1, width: 1, height: 1, temperature: 1 }) applyRoom();
});
form.addEventListener('submit', (event) => event.preventDefault());

// A file of the reader's own is of another room.
study.addEventListener('ringdown-study-change', ({ detail }) => {
  if (detail.what !== 'recordings') return;
  for (const name of ['length', 'width', 'height']) fields(name).value = '';
  for (const input of list.querySelectorAll('input')) input.checked = false;
  applyRoom();
});

try {
  const response = await fetch('recordings/recordings.json');
  if (!response.ok) throw new Error(String(response.status));
  const recordings = await response.json();
  recordings.forEach((one, index) => {
    const label = document.createElement('label');
    const input = Object.assign(document.createElement('input'), { type: 'radio', name: 'recording' });
    const name = Object.assign(document.createElement('strong'), { textContent: one.label });
    const sentence = Object.assign(document.createElement('span'), { textContent: one.sentence });
    label.append(input, name, sentence);
    input.addEventListener('change', () => choose(one));
    input.checked = index === 0;
    list.append(label);
  });
  if (recordings.length > 0) await choose(recordings[0]);
} catch {
  const note = Object.assign(document.createElement('p'), {
    className: 'note',
    textContent: 'They are not here: “npm start” makes them. A file of your own can be dropped at once.',
  });
  list.append(note);
}
