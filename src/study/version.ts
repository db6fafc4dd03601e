/** Version of the engine that made a result, as in package.json. */
export const engineVersion = '0.1.0';
