/* global document, customElements, File */
/** Fills the study: from the reader's own files, or from the rooms of the station that does not exist. */
const study = document.querySelector('#study');
const clock = document.querySelector('#clock');
const said = document.querySelector('#said');

await customElements.whenDefined('ringdown-study');

/** Source, seat and stage by the pattern that the page tells. */
const pattern = /^(all|(?:sub|source|src)\d+)_(?:seat|mic|pos)(\d+)(?:_(before|after))?$/i;

function readNames() {
  let count = 0;
  study.snapshot.recordings.forEach(({ label }, index) => {
    const found = pattern.exec(label);
    if (!found) return;
    const [, source, seat, stage] = found;
    const sourceName = source.toLowerCase() === 'all' ? 'all' : `S${source.replace(/\D+/, '')}`;
    study.study.setRecording(index, {
      sourceName,
      seatName: `seat ${seat}`,
      ...(stage && { stage: stage.toLowerCase() }),
    });
    count += 1;
  });
  return count;
}

function setClock() {
  const timeReference = clock.checked ? 'common' : 'none';
  study.snapshot.recordings.forEach((_, index) => study.study.setRecording(index, { timeReference }));
}

document.querySelector('#names').addEventListener('click', () => {
  const { length } = study.snapshot.recordings;
  const count = readNames();
  said.textContent = `${count} of ${length} names were read; the table in step 5 shows and corrects them.`;
});
clock.addEventListener('change', setClock);

/** The station's files come by name, with their places: as many fields as a practitioner would type. */
document.querySelector('#station').addEventListener('click', async () => {
  said.textContent = 'Fetching the recordings of the station';
  try {
    const response = await fetch('../recordings/station/station.json');
    if (!response.ok) throw new Error(String(response.status));
    const { room, recordings } = await response.json();
    const files = await Promise.all(
      recordings.map(async ({ file }) => {
        const found = await fetch(`../recordings/station/${file}`);
        if (!found.ok) throw new Error(String(found.status));
        return new File([await found.arrayBuffer()], file, { type: 'audio/wav' });
      }),
    );
    study.clear();
    study.removeAttribute('room');
    await study.addFiles(files);
    await study.study.settled();
    const placeOf = (text) => {
      const [x, y, z] = text.split(' ').map(Number);
      return { x, y, z };
    };
    study.snapshot.recordings.forEach(({ label }, index) => {
      const one = recordings.find(({ file }) => file.replace(/\.wav$/, '') === label);
      if (!one) return;
      study.study.setRecording(index, {
        ...{
          sourceName: one.source,
          seatName: `seat ${one.seat}`,
          stage: one.stage,
          timeReference: 'common',
        },
        ...{ seat: placeOf(one.place), ...(one.at && { source: placeOf(one.at) }) },
      });
    });
    clock.checked = true;
    study.setAttribute('room', room);
    said.textContent = `${files.length} recordings are there: four sources at nine seats, and all of them afterwards.`;
  } catch {
    said.textContent = 'They are not here: “npm start” makes them. Files of your own can be chosen at once.';
  }
});

study.addEventListener('ringdown-study-change', ({ detail }) => {
  if (detail.what !== 'recordings') return;
  const { recordings } = study.snapshot;
  clock.checked =
    recordings.length > 0 && recordings.every(({ timeReference }) => timeReference === 'common');
});
