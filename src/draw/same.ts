/** Whether two descriptions ask for the same picture: what is equal by value is not drawn again. */

/** Shallow equality, one level into plain objects and arrays; typed arrays and fields are compared by identity. */
export function sameParts(first: object, second: object, depth = 1): boolean {
  if (first === second) return true;
  const a = first as Record<string, unknown>;
  const b = second as Record<string, unknown>;
  const keys = Object.keys(a);
  if (keys.length !== Object.keys(b).length) return false;
  return keys.every((key) => {
    const [x, y] = [a[key], b[key]];
    if (Object.is(x, y)) return true;
    if (depth === 0 || typeof x !== 'object' || typeof y !== 'object' || !x || !y) return false;
    if (ArrayBuffer.isView(x) || ArrayBuffer.isView(y) || key === 'field') return false;
    return sameParts(x, y, depth - 1);
  });
}
