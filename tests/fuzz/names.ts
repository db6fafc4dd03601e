/** The readers and their part of all inputs. */
export const shares: Readonly<Record<string, number>> = {
  ...{ wav: 0.3, 'wav-channels': 0.05, flac: 0.03, text: 0.16, microphone: 0.08, sofa: 0.1 },
  ...{ sweep: 0.02, study: 0.14, room: 0.06, attributes: 0.06 },
};
