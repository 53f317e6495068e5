import type { DataSource } from 'typeorm';
import { DEMO_PASSWORD, labSettings, listActive } from '#libs/records/src/index.js';
import type { FirstManager } from './first-start.js';

const SHOWN = ['requester', 'technician', 'manager', 'auditor'] as const;

/** What is printed when the lab is open: the address, and how to get in. */
export async function greeting(records: DataSource, address: string, first: FirstManager | null): Promise<string> {
  const lines = ['', `  The lab is open: ${address}`, ''];
  if (first)
    lines.push(
      `  Sign in as ${first.email} with the password ${first.password}`,
      '  It is shown this once; change it after signing in.',
      '',
    );
  lines.push(...(await demoLines(records)), '  Ctrl-C closes it.', '');
  return lines.join('\n');
}

async function demoLines(records: DataSource): Promise<string[]> {
  const { demo } = await labSettings(records.manager);
  if (!demo) return [];
  const people = await listActive(records.manager);
  const one = SHOWN.flatMap((role) => people.filter(({ roles }) => roles[0] === role).slice(0, 1));
  const width = Math.max(...one.map(({ email }) => email.length));
  const rows = one.map(({ email, roles }) => `    ${email.padEnd(width)}  ${roles.join(', ')}`);
  return [`  This is the demo lab. Sign in as any of its people with the password ${DEMO_PASSWORD}, e.g.`, ...rows, ''];
}
