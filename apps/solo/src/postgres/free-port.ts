import { connect, createServer } from 'node:net';

/** The wished port of 127.0.0.1 when it is free, else one that is; any free one for 0. */
export function freePort(wished: number): Promise<number> {
  return new Promise((resolve, reject) => {
    const probe = createServer();
    probe.once('error', () =>
      wished === 0 ? reject(new Error('No port is free on 127.0.0.1.')) : resolve(freePort(0)),
    );
    probe.listen(wished, '127.0.0.1', () => {
      const { port } = probe.address() as { port: number };
      probe.close(() => resolve(port));
    });
  });
}

/** Whether something listens on a port of 127.0.0.1. */
export function answers(port: number): Promise<boolean> {
  return new Promise((resolve) => {
    const socket = connect(port, '127.0.0.1');
    socket.once('connect', () => resolve(true)).once('error', () => resolve(false));
    socket.once('connect', () => socket.destroy());
  });
}
