/** The text of the worker that reads AES69 files, put here by the build; empty where there was none. */
const text: string = '';
export default text;
