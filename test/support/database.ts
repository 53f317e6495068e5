import { randomBytes } from 'node:crypto';
import pg from 'pg';

export interface FreshDatabase {
  url: string;
  drop(): Promise<void>;
}

/** A database of its own for one spec, with the newest schema and nothing in it. Takes a third of a second at most. */
export function freshDatabase(): Promise<FreshDatabase> {
  return newDatabase('lab_template');
}

/** The same without any schema. */
export function emptyDatabase(): Promise<FreshDatabase> {
  return newDatabase('template0');
}

async function newDatabase(template: string): Promise<FreshDatabase> {
  const name = `lab_${randomBytes(6).toString('hex')}`;
  await onServer(`create database ${name} template ${template}`);
  return {
    url: serverUrl().replace(/\/[^/]*$/, `/${name}`),
    drop: () => onServer(`drop database ${name} with (force)`),
  };
}

function serverUrl(): string {
  const url = process.env['TEST_POSTGRES_URL'];
  if (!url)
    throw new Error(
      'No database was started: specs that need one live under test/stories, records, faults, exchange or browser.',
    );
  return url;
}

async function onServer(sql: string): Promise<void> {
  const client = new pg.Client(serverUrl());
  await client.connect();
  await client.query(sql).finally(() => client.end());
}
