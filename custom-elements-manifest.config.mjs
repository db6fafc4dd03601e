/** `npm run manifest`: custom-elements.json from the JSDoc of the elements, with the paths of the package. */
/** @param {string} path */
const published = (path) => path.replace(/^\/?src\//, 'dist/').replace(/\.ts$/, '.js');

/** What an element tells the study about itself: seen by our own classes, and no part of the interface. */
const betweenOurs = new Set(['needs', 'systemNeeds']);

/** Settings are inherited from files that define no element; the manifest keeps only what users touch. */
const publicOnly = {
  name: 'public-only',
  /** @param {any} context */
  packageLinkPhase({ customElementsManifest }) {
    customElementsManifest.modules = customElementsManifest.modules.filter(
      (/** @type {any} */ { declarations = [], exports = [] }) =>
        [...declarations, ...exports].some(
          (/** @type {any} */ { tagName, kind }) => tagName || kind === 'custom-element-definition',
        ),
    );
    for (const module of customElementsManifest.modules) {
      module.path = published(module.path);
      for (const declaration of module.declarations ?? []) {
        declaration.members = (declaration.members ?? []).filter(
          (/** @type {any} */ { privacy, name }) =>
            privacy !== 'private' &&
            privacy !== 'protected' &&
            !name.startsWith('#') &&
            !betweenOurs.has(name),
        );
        // Events between elements of ours are no part of the interface.
        declaration.events = (declaration.events ?? []).filter((/** @type {any} */ { name }) =>
          name?.startsWith('ringdown-'),
        );
        // What the alias of the sources stands for.
        for (const { type } of [...declaration.members, ...(declaration.attributes ?? [])])
          if (type) type.text = type.text.replace(/\bGiven\b/, 'string | number | null');
        for (const inherited of [...declaration.members, ...(declaration.attributes ?? [])])
          if (inherited.inheritedFrom?.module)
            inherited.inheritedFrom.module = published(inherited.inheritedFrom.module);
        if (declaration.superclass?.module)
          declaration.superclass.module = published(declaration.superclass.module);
      }
      for (const exported of module.exports ?? [])
        if (exported.declaration?.module)
          exported.declaration.module = published(exported.declaration.module);
    }
  },
};

export default {
  globs: ['src/elements/**/*.ts', 'src/define/*.ts'],
  exclude: ['src/define/*-flat.ts', 'src/elements/*/*-flat.ts'],
  outdir: '.',
  litelement: true,
  packagejson: false,
  plugins: [publicOnly],
};
