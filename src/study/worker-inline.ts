/** The text of the worker, put here by the build; empty where there was none. */
const text: string = '';
export default text;
