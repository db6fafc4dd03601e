/** The worker: the jobs of the registry behind messages. The build makes this one self-contained file. */
import { startJob, transferables } from './jobs.js';
import { serve, type HostPort } from './worker-host.js';

serve(self as unknown as HostPort, { start: startJob, transferables });
