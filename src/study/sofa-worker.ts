/** The worker that reads one AES69 (SOFA) file and is then ended. The build makes this one self-contained file. */
import { startSofaJob, sofaTransferables } from './sofa-jobs.js';
import { serve, type HostPort } from './worker-host.js';

serve(self as unknown as HostPort, {
  start: startSofaJob,
  transferables: (_type, result) => sofaTransferables(result),
});
