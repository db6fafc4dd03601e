/** Where a value holds a number that is none; null where all are finite. Arrays of any kind and objects are looked through. */
export function notFinite(value: unknown, path = 'result', depth = 0): string | null {
  if (typeof value === 'number') return Number.isFinite(value) ? null : `${path} is ${value}`;
  if (value instanceof Float64Array || value instanceof Float32Array) {
    const at = value.findIndex((one) => !Number.isFinite(one));
    return at < 0 ? null : `${path}[${at}] is ${value[at]}`;
  }
  if (typeof value !== 'object' || value === null || ArrayBuffer.isView(value) || depth > 12) return null;
  for (const [key, inner] of Object.entries(value)) {
    const found = notFinite(inner, `${path}.${key}`, depth + 1);
    if (found) return found;
  }
  return null;
}
