/**
 * Long because one list of entries runs through all of it: what a page names, what a user adds, what a saved study
 * holds, and their coming back after a suspension.
 */
import type {
  Part,
  RecordingOptions,
  Study,
  StudyChoices,
  StudyFailure,
  StudyPlace,
  StudySnapshot,
} from '../../study/types.js';
import { Links } from './links.js';
import { checkOrder, failed, nameOf, readRecording, readSettings } from './settings.js';
import type { Settings } from './settings.js';
import { arrive, bytesOf, signatureOf, type Arrived, type PageSource, type Places } from './page-files.js';
import { isStudyFile, openStudyText, type OpenedStudy } from '../../study/document.js';
import { hasMore, more } from '../../study/more.js';
import { emptyTexts } from '../../study/sheet-texts.js';
import { defaultDesign } from '../../study/system-design.js';
import { createSystem } from '../../study/system.js';
import type { System, SystemDesign, SystemPart } from '../../study/system-types.js';

/** Of a recording that is read already. */
const noBytes: Arrived = { bytes: new ArrayBuffer(0) };

/** What it takes to add a recording once more, after a suspension. */
interface Entry {
  readonly id: object | null;
  readonly signature: string;
  readonly label: string;
  readonly fetching: AbortController;
  readonly read: (signal: AbortSignal) => Promise<Arrived>;
  readonly options: () => RecordingOptions;
  /** Of a saved study: read already. */
  readonly copy?: StudySnapshot['recordings'][number];
  key: string | null;
  failure: StudyFailure | null;
  waiting: boolean;
}

/** @param progressOnly Nothing but how far the work has come is different. */
type FeedListener = (progressOnly: boolean) => void;

/** Told a dozen times a second, on a page whose tables may have hundreds of rows. */
const onlyProgress = (now: StudySnapshot, before: StudySnapshot): boolean =>
  Object.entries(now).every(
    ([name, value]) => name === 'progress' || value === before[name as keyof StudySnapshot],
  );

/**
 * Feeds one study with what attributes and files say, and adds to its failures those that never reach it: attributes
 * that cannot be read, files that did not arrive. Owned by one element; shared with others through context.
 *
 * `suspend` and `resume` mirror the owner's being away from the page: the study and its work end, what it holds is read
 * again on the way back.
 */
export class Feed {
  readonly #make: () => Study;
  readonly #listeners = new Set<FeedListener>();
  /** What an address says of the view. */
  readonly links: Links;
  #study: Study;
  #unsubscribe: () => void;
  #defaults: StudyChoices;
  /** What attributes said last: only what they say anew takes the place of what the user chose. */
  #applied: StudyChoices;
  #entries: Entry[] = [];
  #order: Promise<void> = Promise.resolve();
  #settings = '';
  #attributes: ReturnType<typeof readSettings> = { room: null, choices: {}, failures: [] };
  /** Why no plan can be computed. */
  #planFailure: StudyFailure | null = null;
  /** What the attributes name themselves, without the defaults. */
  #named: Partial<StudyChoices> = {};
  /** Of a saved study, where the attributes name none. */
  #savedRoom: StudySnapshot['room'] = null;
  #places: Places = new Map();
  #suspended = false;
  #placesGiven = '';
  /** What the user made of the study while it was there: it is so again after a suspension. */
  #kept: Pick<StudySnapshot, 'room' | 'choices' | 'places' | 'sheet'> | null = null;
  /** What the page asked for when the user opened another study: it comes back only where the page asks anew. */
  readonly #closed = new Map<object, string>();
  #system: System | null = null;
  #design: SystemDesign | null = null;
  readonly #systemNeeds = new Set<{ readonly part: SystemPart; letGo: () => void }>();
  /** What views need, with the way to let it go; the study they hold may be replaced by another. */
  readonly #needs = new Set<{ readonly part: Part; letGo: () => void }>();

  constructor(make: () => Study) {
    this.#make = make;
    this.#study = make();
    this.#defaults = this.#applied = this.#study.snapshot.choices;
    this.links = new Links(this, () => this.#tell());
    this.#unsubscribe = this.#study.subscribe((now, before) => this.#notify(onlyProgress(now, before)));
  }

  get study(): Study {
    return this.#study;
  }

  get snapshot(): StudySnapshot {
    return this.#study.snapshot;
  }

  /** Whether files are still on their way to the study. */
  get fetching(): boolean {
    return this.#entries.some(({ waiting }) => waiting);
  }

  /** Recordings that are there or on their way, without those that were refused. */
  get count(): number {
    const refused = this.snapshot.failures.filter(({ label }) => label !== null).length;
    return this.#entries.filter(({ failure }) => failure === null).length - refused;
  }

  get failures(): readonly StudyFailure[] {
    const own = this.#entries.flatMap(({ failure }) => failure ?? []);
    return [...this.#attributes.failures, ...this.links.failures, ...own, ...this.snapshot.failures];
  }

  /** Called after every change, also by the study itself. */
  subscribe(listener: FeedListener): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  /** Has a part computed until the returned function is called, also across a suspension. */
  need(part: Part): () => void {
    const need = { part, letGo: this.#study.need(part) };
    this.#needs.add(need);
    return () => {
      if (this.#needs.delete(need)) need.letGo();
    };
  }

  /** Sources and seats of the study; made for the first view that asks. */
  get system(): System {
    return this.#system ?? this.#makeSystem();
  }

  #makeSystem(): System {
    const system = (this.#system = createSystem(this.#study));
    if (this.#design) system.setDesign(this.#design);
    system.subscribe(() => this.#notify());
    return system;
  }

  /** What was decided about sources and seats; null where nobody looked at them. */
  get design(): SystemDesign | null {
    return this.#system?.snapshot.design ?? this.#design;
  }

  /** As `need`, of sources and seats. */
  needSystem(part: SystemPart): () => void {
    const need = { part, letGo: this.system.need(part) };
    this.#systemNeeds.add(need);
    return () => {
      if (this.#systemNeeds.delete(need)) need.letGo();
    };
  }

  configure(settings: Settings): void {
    const signature = JSON.stringify(settings);
    if (signature === this.#settings) return;
    this.#settings = signature;
    let read = readSettings(settings);
    if (read.room?.plan && hasMore()) {
      // What computes a plan lies in a file of its own; the recordings need not wait for it.
      const again = (): void => {
        if (this.#settings !== signature) return;
        this.#settings = '';
        this.configure(settings);
      };
      if (!this.#planFailure) {
        more().then(again, (thrown: unknown) => {
          this.#planFailure = failed(thrown);
          again();
        });
      }
      const failures = [...read.failures, ...(this.#planFailure ? [this.#planFailure] : [])];
      read = { ...read, room: null, failures };
    }
    this.#named = read.choices;
    const choices = { ...this.#defaults, ...read.choices };
    const disorder = checkOrder(choices);
    this.#attributes = disorder
      ? { ...read, choices: {}, failures: [...read.failures, disorder] }
      : { ...read, choices };
    this.#apply();
    this.#notify();
  }

  #apply(): void {
    const { choices } = this.#attributes;
    const room = this.#attributes.room ?? this.#savedRoom;
    if (JSON.stringify(room) !== JSON.stringify(this.snapshot.room)) this.#study.setRoom(room);
    const changed = Object.entries(choices).filter(
      ([name, value]) => this.#applied[name as keyof StudyChoices] !== value,
    );
    this.#applied = { ...this.#applied, ...choices };
    if (changed.length > 0) this.#study.setChoices(Object.fromEntries(changed));
  }

  /** Brings the recordings that the page asks for to those listed; those that the user added stay. */
  setSources(sources: readonly PageSource[], places: Places): void {
    this.#places = places;
    const wanted = sources.map((source) => ({ source, signature: signatureOf(source, places) }));
    for (const entry of [...this.#entries]) {
      if (entry.id === null) continue;
      if (!wanted.some(({ source, signature }) => source.id === entry.id && signature === entry.signature))
        this.#drop(entry);
    }
    for (const { source, signature } of wanted) {
      if (this.#entries.some(({ id }) => id === source.id)) continue;
      if (this.#closed.get(source.id) === signature) continue;
      this.#closed.delete(source.id);
      if (source.url === null && source.data === null) continue;
      const { url, settings } = source;
      const fallback = url === null ? '' : nameOf(url);
      void this.#add({
        id: source.id,
        signature,
        label: settings.label ? String(settings.label) : fallback,
        read: (signal) => arrive(source, signal),
        options: () => readRecording(settings, fallback, this.#places),
      });
    }
  }

  /** Places that the page names; those that the user moved stay where they are until the page says anew. */
  setPlaces(places: readonly StudyPlace[]): void {
    const signature = JSON.stringify(places);
    if (signature === this.#placesGiven || (this.#placesGiven === '' && places.length === 0)) return;
    this.#placesGiven = signature;
    this.#study.setPlaces(places);
  }

  /** Files that the user chose or dropped; the last of them becomes the one shown. */
  async addFiles(files: readonly File[]): Promise<void> {
    await Promise.all(
      files.map((file) => {
        const label = nameOf(file.name);
        return this.#add({
          id: null,
          signature: '',
          label,
          read: async () => ({ bytes: await bytesOf(file) }),
          options: () => ({ label }),
        });
      }),
    );
  }

  /** Puts a saved study in the place of all that is there, also of what the page asked for. */
  async open(saved: OpenedStudy): Promise<void> {
    this.clear();
    const study = this.#study;
    study.setChoices(saved.choices);
    study.setRoom((this.#savedRoom = saved.room));
    study.setPlaces(saved.places);
    this.#decided(saved);
    await this.#addCopies(saved, { id: null, signature: '' });
  }

  /** The recordings of a saved study, each standing for the file that is named. */
  async #addCopies(saved: OpenedStudy, file: Pick<Entry, 'id' | 'signature'>): Promise<void> {
    const study = this.#study;
    const read = (): Promise<Arrived> => Promise.resolve(noBytes);
    await Promise.all(
      saved.recordings.map((copy) =>
        this.#add({ ...file, label: copy.label, copy, read, options: () => ({}) }),
      ),
    );
    if (this.#study === study) study.setActive(saved.active);
  }

  #decided({ sheet, design }: OpenedStudy): void {
    this.#study.setSheet(sheet);
    this.#design = design;
    if (design) this.#system?.setDesign(design);
  }

  /**
   * A page that names a saved study as its file: the recordings of the study stand in the place of that file, ready to be
   * drawn. What the page's attributes say goes before what the study says.
   */
  #unfold(entry: Entry, saved: OpenedStudy): void {
    const study = this.#study;
    this.#entries = this.#entries.filter((other) => other !== entry);
    this.#savedRoom = saved.room;
    study.setChoices({ ...saved.choices, ...this.#named });
    if (this.#attributes.room === null) study.setRoom(saved.room);
    if (this.#placesGiven === '') study.setPlaces(saved.places);
    this.#decided(saved);
    const { id, signature } = entry;
    void this.#addCopies(saved, { id, signature });
  }

  /** Takes everything away, also what the page asked for. */
  clear(): void {
    for (const entry of [...this.#entries]) {
      if (entry.id !== null) this.#closed.set(entry.id, entry.signature);
      this.#drop(entry);
    }
    this.#study.clear();
    this.#savedRoom = null;
    this.#study.setRoom(null);
    this.#study.setPlaces([]);
    this.#study.setSheet(emptyTexts);
    this.#design = null;
    this.#system?.setDesign(defaultDesign);
    this.#notify();
  }

  #add(what: Pick<Entry, 'id' | 'signature' | 'label' | 'read' | 'options' | 'copy'>): Promise<void> {
    const entry: Entry = {
      ...what,
      fetching: new AbortController(),
      key: null,
      failure: null,
      waiting: true,
    };
    this.#entries.push(entry);
    return this.#load(entry);
  }

  /** Files arrive in parallel; the study gets them in the order of the page. */
  #load(entry: Entry): Promise<void> {
    const study = this.#study;
    const current = (): boolean => this.#entries.includes(entry) && this.#study === study && !this.#suspended;
    entry.waiting = true;
    const reading = entry.read(entry.fetching.signal).then(
      (value) => ({ value }),
      (error: unknown) => ({ error }),
    );
    const turn = this.#order.then(async () => {
      const arrived = await reading;
      if (!current()) return;
      try {
        if ('error' in arrived) throw arrived.error;
        const { bytes, beside } = arrived.value;
        if (entry.id !== null && !entry.copy && isStudyFile(bytes)) {
          this.#unfold(entry, openStudyText(new TextDecoder().decode(bytes)));
          return;
        }
        const added = entry.copy
          ? study.addCopy(entry.copy)
          : study.addRecording(bytes, { ...entry.options(), ...beside });
        entry.waiting = false;
        void added.then((key) => {
          entry.key = key;
          // Dropped or replaced while the study was still reading it.
          if (!this.#entries.includes(entry) && this.#study === study) study.removeRecording(key);
        });
      } catch (error) {
        entry.failure = failed(error, entry.label || null);
        entry.waiting = false;
      }
      this.#notify();
    });
    this.#order = turn;
    this.#notify();
    return turn;
  }

  #drop(entry: Entry): void {
    entry.fetching.abort();
    this.#entries = this.#entries.filter((other) => other !== entry);
    if (entry.key !== null) this.#study.removeRecording(entry.key);
    this.#notify();
  }

  /** Ends the study and its work. */
  suspend(): void {
    if (this.#suspended) return;
    this.#suspended = true;
    this.#unsubscribe();
    const { room, choices, places, sheet } = this.snapshot;
    this.#kept = { room, choices, places, sheet };
    this.#design = this.#system?.snapshot.design ?? this.#design;
    this.#system?.dispose();
    this.#system = null;
    this.#study.dispose();
  }

  /** Makes the study anew from what it was fed with. */
  resume(): void {
    if (!this.#suspended) return;
    this.#suspended = false;
    this.#study = this.#make();
    this.#unsubscribe = this.#study.subscribe((now, before) => this.#notify(onlyProgress(now, before)));
    this.#order = Promise.resolve();
    for (const need of this.#needs) need.letGo = this.#study.need(need.part);
    for (const need of this.#systemNeeds) need.letGo = this.system.need(need.part);
    if (this.#kept) {
      this.#study.setRoom(this.#kept.room);
      this.#study.setChoices(this.#kept.choices);
      this.#study.setPlaces(this.#kept.places);
      this.#study.setSheet(this.#kept.sheet);
    }
    for (const entry of this.#entries) {
      entry.key = null;
      entry.failure = null;
      void this.#load(entry);
    }
    this.#notify();
  }

  #notify(progressOnly = false): void {
    if (!progressOnly) this.links.follow();
    this.#tell(progressOnly);
  }

  #tell(progressOnly = false): void {
    for (const listener of [...this.#listeners]) listener(progressOnly);
  }
}
