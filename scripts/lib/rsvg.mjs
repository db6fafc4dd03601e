import { findProgram, installDebianPackages } from './debian.mjs';
import { Complaint } from './project.mjs';

/** @returns {string} the path of a renderer of SVG that is no browser; installs Debian's where there is none */
export function requireRsvg() {
  const find = () => findProgram(['/usr/bin/rsvg-convert', 'rsvg-convert']);
  const found = find() ?? (installDebianPackages(['librsvg2-bin', 'fonts-dejavu-core']) ? find() : undefined);
  if (!found) {
    throw new Complaint(
      'The test of saved pictures needs a second renderer and found none: install rsvg-convert (librsvg2-bin).',
    );
  }
  return found;
}
