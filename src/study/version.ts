/** Version of the engine that made a result, as in package.json. */
export const engineVersion = '0.1.0';

/** Of the saved study, not of the engine. A reader takes older ones through `migrations.ts`, and refuses newer ones. */
export const documentVersion = 1;
