/* global document, PerformanceObserver */
/** Runs in a page with one study: adds recordings all at once, and watches what becomes of the main thread. */
export async function drive(count) {
  const study = document.querySelector('ringdown-study');
  const { study: own } = study;
  let longest = 0;
  let tasks = 0;
  new PerformanceObserver((list) => {
    for (const { duration } of list.getEntries()) {
      longest = Math.max(longest, duration);
      tasks++;
    }
  }).observe({ type: 'longtask', buffered: false });
  let [updates, last, fell] = [0, 0, 0];
  own.subscribe(({ progress }) => {
    if (!progress) return;
    updates++;
    if (progress.fraction < last - 1e-9) fell++;
    last = progress.fraction;
  });
  const begin = performance.now();
  let loaded = 0;
  for (let k = 0; k < count; k++) {
    const bytes = await (await fetch(`/wav/${k}`)).arrayBuffer();
    void own.addRecording(bytes, { label: `seat ${k}` }).then(() => loaded++);
  }
  while (loaded < count) await new Promise((resolve) => setTimeout(resolve, 100));
  await own.settled();
  const seconds = (performance.now() - begin) / 1000;
  // What follows a little later, as keeping the study, is of it too.
  await new Promise((resolve) => setTimeout(resolve, 3000));
  return {
    seconds,
    ...{ longest, tasks, updates, fell, count: own.snapshot.recordings.length },
    megabytes: performance.memory.usedJSHeapSize / 2 ** 20,
  };
}
