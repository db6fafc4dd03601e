/**
 * A worker from its text, for pages of another origin and bundlers that lost its file; null where no build put a text
 * there. The address of the text is let go once the worker has surely read it.
 */
export function workerFromText(text: string): Worker | null {
  if (text === '') return null;
  const address = URL.createObjectURL(new Blob([text], { type: 'text/javascript' }));
  try {
    return new Worker(address, { type: 'module' });
  } finally {
    setTimeout(() => URL.revokeObjectURL(address), 30_000);
  }
}
