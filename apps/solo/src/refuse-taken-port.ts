import { createServer } from 'node:net';
import { LabError } from '#libs/errors/src/index.js';

/** Looks before anything is started. @throws {LabError} `port/taken`, with what to do */
export function refuseTakenPort(port: number, host: string): Promise<void> {
  return new Promise((resolve, reject) => {
    const probe = createServer();
    probe.once('error', ({ code }: NodeJS.ErrnoException) => reject(refusal(port, host, code)));
    probe.listen(port, host, () => probe.close(() => resolve()));
  });
}

function refusal(port: number, host: string, code: string | undefined): LabError {
  if (code === 'EADDRINUSE') {
    return new LabError(
      'port/taken',
      `Another program has port ${port} already. Choose one with PORT, e.g. PORT=${port + 1} npm start.`,
    );
  }
  return new LabError(
    'port/refused',
    `The lab cannot listen on port ${port} of ${host} (${code}). Choose others with PORT and HOST.`,
  );
}
