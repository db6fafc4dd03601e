import { roomName } from '../../sheet/room-name.js';
import type { Part } from '../../study/types.js';
import { ChartElement } from './chart-element.js';

/** A chart of a room, which may be there without any recording. */
export abstract class RoomChartElement extends ChartElement {
  /** @internal */
  override get needs(): readonly Part[] {
    return ['prediction'];
  }

  /**
   * An element that names a room and is in no study shows that room.
   * @internal
   */
  get ownsRoom(): boolean {
    return this.namesOwnRoom;
  }

  protected override get recordingLabel(): string {
    const { snapshot } = this;
    const label = snapshot?.recordings[snapshot.active]?.label;
    if (label) return label;
    return snapshot?.room ? roomName(snapshot.room, this.speaker) : this.speaker.view('this-room');
  }

  protected override emptyText(): string | null {
    return this.snapshot?.room ? null : this.speaker.view('room-none');
  }

  protected override nothingText(): string {
    return this.speaker.view(this.snapshot?.room ? 'room-coming' : 'room-none');
  }
}
