import { findProgram, installDebianPackages } from './debian.mjs';
import { Complaint } from './project.mjs';

const find = () => findProgram(['pdftotext']);

/** @returns {string} the program that reads the text of a PDF; installs Debian's where there is none */
export function requirePdfText() {
  const found = find() ?? (installDebianPackages(['poppler-utils']) ? find() : undefined);
  if (!found)
    throw new Complaint(
      'The test of the printed sheet needs pdftotext (poppler-utils) and found none: install it.',
    );
  return found;
}
