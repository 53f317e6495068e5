import { spawn, spawnSync } from 'node:child_process';
import { once } from 'node:events';
import { chownSync, readFileSync, statSync } from 'node:fs';
import { platform } from 'node:os';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { answers } from './free-port.js';
import { isRoot } from './postgres-binaries.js';

export const SUPERUSER = 'lab';

const LOG = 'server.log';
const START_TRIES = 20; // after kill -9 of the server its children live on for up to 10 s and hold the folder

/** Who runs the server: PostgreSQL refuses root, so root steps down to whoever owns the data, or to nobody. */
interface Runner {
  uid?: number;
  gid?: number;
}

const NOBODY = { uid: 65534, gid: 65534 };

/** The programs of PostgreSQL on one data folder. */
export class PostgresServer {
  private readonly runner: Runner;

  constructor(
    private readonly native: string,
    private readonly data: string,
    private readonly fast: boolean,
  ) {
    this.runner = runnerOf(data);
  }

  /** Fills the empty data folder. @throws Error in the words of initdb */
  initialise(passwordFile: string): void {
    this.handOver(this.data);
    const asked = ['-U', SUPERUSER, '--auth=scram-sha-256', `--pwfile=${passwordFile}`, '-E', 'UTF8', '--locale=C'];
    const { program, args, options } = this.command('initdb', this.fast ? [...asked, '--no-sync'] : asked);
    const made = spawnSync(program, args, { ...options, encoding: 'utf8', stdio: ['ignore', 'pipe', 'pipe'] });
    if (made.status !== 0)
      throw new Error(`The embedded database could not be made: ${made.stderr || String(made.error)}`);
  }

  /**
   * Starts it on this port, and waits until it answers. The event loop goes on meanwhile.
   *
   * @throws Error naming the log file
   */
  async start(port: number): Promise<number> {
    const waiting = ['-w', '-t', '60', '-l', this.inData(LOG), '-o', optionsOf(port, this.fast), 'start'];
    for (let tried = 1; tried <= START_TRIES; tried++) {
      const { program, args, options } = this.command('pg_ctl', waiting);
      const [status] = (await once(spawn(program, args, { ...options, stdio: 'ignore' }), 'exit')) as [number | null];
      if (status === 0 && (await this.runningPort()) === port) return port;
      await pause(500);
    }
    throw new Error(`The embedded database does not start; ${join(this.data, LOG)} says why.`);
  }

  /** The port it answers on, or null when it is down: a process that was just killed still counts as running for pg_ctl. */
  async runningPort(): Promise<number | null> {
    if (this.control(['status']) !== 0) return null;
    const port = Number(readFileSync(join(this.data, 'postmaster.pid'), 'utf8').split('\n')[3]);
    return (await answers(port)) ? port : null;
  }

  stop(): void {
    this.control(['-w', '-m', 'fast', 'stop']);
  }

  /** Gives a file to the user who runs the server. */
  handOver(path: string): void {
    if (this.runner.uid !== undefined && this.runner.gid !== undefined)
      chownSync(path, this.runner.uid, this.runner.gid);
  }

  private control(asked: string[]): number | null {
    const { program, args, options } = this.command('pg_ctl', asked);
    return spawnSync(program, args, { ...options, stdio: 'ignore' }).status; // the server would inherit a pipe and keep it open
  }

  private command(name: 'initdb' | 'pg_ctl', args: string[]) {
    return {
      program: join(this.native, 'bin', name),
      args: ['-D', this.inData(), ...args],
      options: {
        ...this.runner,
        cwd: this.data,
        env: { PATH: '/usr/bin:/bin', LC_ALL: 'C', TZ: 'UTC', ...windowsEnvironment() },
        windowsHide: true,
      },
    };
  }

  /**
   * A user that root stepped down to cannot walk through a private parent folder, but it may use the folder it was born in:
   * the child changes into it while it is still root.
   */
  private inData(file = ''): string {
    return platform() === 'linux' ? join('/proc/self/cwd', file) : join(this.data, file);
  }
}

function optionsOf(port: number, fast: boolean): string {
  const risky = ['fsync=off', 'synchronous_commit=off', 'full_page_writes=off'];
  const settings = [
    "listen_addresses='127.0.0.1'",
    "unix_socket_directories=''",
    'max_connections=200',
    ...(fast ? risky : []),
  ];
  return [`-p ${port}`, ...settings.map((setting) => `-c ${setting}`)].join(' ');
}

function runnerOf(data: string): Runner {
  if (!isRoot()) return {};
  const owner = statSync(data, { throwIfNoEntry: false });
  return owner && owner.uid !== 0 ? { uid: owner.uid, gid: owner.gid } : NOBODY;
}

function windowsEnvironment(): Record<string, string | undefined> {
  return platform() === 'win32' ? process.env : {};
}
