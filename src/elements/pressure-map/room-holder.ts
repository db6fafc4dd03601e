import { afterGrace } from '../scope.js';
import type { Dispose } from '../scope.js';
import type { RoomMaker, RoomView } from './room.js';

export interface RoomHolderHost {
  /** Fetches what draws the room; null where this build has none. */
  readonly load: () => Promise<RoomMaker> | null;
  readonly request: () => void;
  /** The room cannot be drawn here, for good. */
  readonly gone: () => void;
}

/** Who draws the room that can be turned: fetched when first asked for, given back when its element stays away. */
export class RoomHolder {
  readonly #host: RoomHolderHost;
  #maker: RoomMaker | null = null;
  #room: RoomView | null = null;
  #loading = false;
  #callOff: Dispose | null = null;

  constructor(host: RoomHolderHost) {
    this.#host = host;
  }

  /** What is there already, drawable or not. */
  get room(): RoomView | null {
    return this.#room;
  }

  /** What draws the room, where it can be drawn now; asked for where it is not there yet. */
  now(): RoomView | null {
    if (!this.#maker) {
      void this.#load();
      return null;
    }
    this.#room ??= this.#maker.create(() => this.#host.request());
    if (this.#room.available) return this.#room;
    this.#lost();
    return null;
  }

  /** The element is back before what it held was given away. */
  connected(): void {
    this.#callOff?.();
    this.#callOff = null;
  }

  /** A moved element keeps its part of the page's context; one that stays away gives it back. */
  disconnected(): void {
    this.#callOff = afterGrace(() => this.#free());
  }

  #free(): void {
    this.#room?.dispose();
    this.#room = null;
  }

  /** For good where there never was a context; one that is lost may come back. */
  #lost(): void {
    if (this.#room?.canCome) return;
    this.#free();
    this.#host.gone();
  }

  async #load(): Promise<void> {
    if (this.#loading) return;
    this.#loading = true;
    try {
      this.#maker = (await this.#host.load()) ?? null;
    } catch {
      // A page that forbids the further module, or a lost network: plan and section show the same.
    }
    this.#loading = false;
    if (this.#maker) this.#host.request();
    else this.#host.gone();
  }
}
