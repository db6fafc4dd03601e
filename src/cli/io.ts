/** What the command needs of its surroundings, so that tests run it without a process. */
export interface CommandIo {
  out(text: string): void;
  err(text: string): void;
  /** @throws RingdownError with the code of a `file-` sentence */
  readFile(path: string): Promise<Uint8Array>;
  /** @throws RingdownError `file-unwritable` */
  writeFile(path: string, bytes: Uint8Array): Promise<void>;
}

/** The call did what was asked; a file was refused; the call's words are off. */
export const exitStatus = { done: 0, refused: 1, misused: 2 } as const;
