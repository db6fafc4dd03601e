/** Where a page takes markup only from policies, ours is one; a page that forbids it gets its exception. */
interface Policies {
  createPolicy(
    name: string,
    rules: { createHTML: (text: string) => string },
  ): { createHTML(text: string): string };
}

let policy: ReturnType<Policies['createPolicy']> | null = null;

/** Text of ours, in which everything that was typed is escaped, as a page under Trusted Types takes it. */
export function trustedHtml(text: string): string {
  const policies = (globalThis as { trustedTypes?: Policies }).trustedTypes;
  if (!policies) return text;
  policy ??= policies.createPolicy('ringdown', { createHTML: (one) => one });
  return policy.createHTML(text);
}
