import type { DecodedAudio } from '../types.js';
import { sofaAudio } from './sofa.js';

/**
 * `sofaAudio` with the HDF5 reader, which is loaded by this call only. In a page a file from a stranger is read in a
 * worker that can be stopped instead.
 *
 * @throws RingdownError as `sofaAudio`
 */
export async function readSofa(bytes: Uint8Array, measurement?: number): Promise<DecodedAudio> {
  const { openHdf5 } = await import('../vendor/hdf5.js');
  return sofaAudio(openHdf5, bytes, measurement);
}
