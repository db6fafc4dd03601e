import { spawn } from 'node:child_process';
import { fileURLToPath } from 'node:url';

/** Absolute path of the project's top folder, with a closing slash. */
export const root = fileURLToPath(new URL('../../', import.meta.url));

/**
 * Runs a program in the project's folder with its output on the screen.
 * @param {string} program
 * @param {string[]} args
 * @param {NodeJS.ProcessEnv} [env] added to the environment
 * @returns {Promise<number>} its exit status; 1 where it was killed or could not be started
 */
export function run(program, args, env = {}) {
  return new Promise((resolve) => {
    const child = spawn(program, args, { cwd: root, stdio: 'inherit', env: { ...process.env, ...env } });
    child.on('error', (error) => {
      console.error(`${program} could not be started: ${error.message}`);
      resolve(1);
    });
    child.on('close', (code) => resolve(code ?? 1));
  });
}

/**
 * Runs a JavaScript file of an installed package, without going through npx.
 * @param {string} file below node_modules
 * @param {string[]} args
 * @param {NodeJS.ProcessEnv} [env]
 */
export function runTool(file, args, env) {
  return run(process.execPath, [`${root}node_modules/${file}`, ...args], env);
}

/**
 * A failure the user can act on: its sentence is all that is printed.
 */
export class Complaint extends Error {}

/**
 * Runs a script's main function; a complaint ends it with its one sentence, anything else with its stack.
 * @param {() => Promise<number | void>} main returns the exit status, 0 if nothing
 */
export async function script(main) {
  try {
    process.exitCode = (await main()) ?? 0;
  } catch (error) {
    console.error(error instanceof Complaint ? error.message : error);
    process.exitCode = 1;
  }
}
