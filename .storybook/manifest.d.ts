/** Made by `npm run manifest`; not there on a fresh clone. */
declare module '*custom-elements.json' {
  const manifest: unknown;
  export default manifest;
}
