/** The program `ringdown`. */
import { nodeIo } from './node-io.js';
import { run } from './run.js';

// A reader that has seen enough, as `head` has, closes the pipe: that is no failure of ours.
for (const stream of [process.stdout, process.stderr]) {
  stream.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code === 'EPIPE') process.exit(process.exitCode ?? 0);
    process.exit(1);
  });
}

// The status is set, not exited with: what is still being written to a pipe must arrive.
process.exitCode = await run(process.argv.slice(2), nodeIo);
