import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { setTimeout as pause } from 'node:timers/promises';

const LOOK_EVERY_MS = 100;
const LONGEST_START_MS = 120_000; // a process in another container has a number that says nothing here

/** Files that this process holds: a file with our own number that is not among them was left by an earlier process. */
const held = new Set<string>();

/**
 * Does something while no other process does it: the first to make the file may, the others wait for their turn. What a killed
 * process has left is taken over.
 */
export async function oneStarterAtATime<Done>(file: string, work: () => Promise<Done>): Promise<Done> {
  await take(file);
  try {
    return await work();
  } finally {
    held.delete(file);
    rmSync(file, { force: true });
  }
}

async function take(file: string): Promise<void> {
  for (let waitedMs = 0; ; waitedMs += LOOK_EVERY_MS) {
    if (made(file)) {
      held.add(file);
      return;
    }
    const holder = holderOf(file);
    const isLeft = holder !== null && (holder === process.pid ? !held.has(file) : !isAlive(holder));
    if (isLeft || waitedMs > LONGEST_START_MS) rmSync(file, { force: true });
    await pause(LOOK_EVERY_MS);
  }
}

function made(file: string): boolean {
  try {
    writeFileSync(file, String(process.pid), { flag: 'wx' });
    return true;
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'EEXIST') return false;
    throw error;
  }
}

/** Null while it is being written, or when it has just gone. */
function holderOf(file: string): number | null {
  try {
    return Number(readFileSync(file, 'utf8')) || null;
  } catch {
    return null;
  }
}

function isAlive(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === 'EPERM';
  }
}
