/**
 * The last result worked out of an object, kept as long as the object is: views render a dozen times a second while
 * something else is computed, and some of what they show takes longer than that to work out.
 *
 * @param make Gives the same for the same object and the same further parameters, which are compared as text.
 */
export function kept<K extends object, P extends readonly unknown[], V>(
  make: (of: K, ...params: P) => V,
): (of: K, ...params: P) => V {
  const results = new WeakMap<K, { readonly key: string; readonly value: V }>();
  return (of, ...params) => {
    const key = JSON.stringify(params);
    const known = results.get(of);
    if (known?.key === key) return known.value;
    const value = make(of, ...params);
    results.set(of, { key, value });
    return value;
  };
}
