import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex } from '@noble/hashes/utils.js';

/**
 * SHA-256 (FIPS 180-4) of the bytes, lower-case hex. Not the page's own crypto: that is missing on plain http, and it
 * is asynchronous.
 */
export function hashOf(bytes: Uint8Array): string {
  return bytesToHex(sha256(bytes));
}
