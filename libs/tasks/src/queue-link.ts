import { createPostgresBackend, createRedisBackend } from 'bullmq';
import type { BackendFactory, ConnectionOptions } from 'bullmq';
import { Redis } from 'ioredis';
import pg from 'pg';

/** Where queued work lives: on Redis when its address is given, else on the lab's own PostgreSQL. */
export interface QueuePlace {
  databaseUrl: string;
  redisUrl?: string | undefined;
}

/** A connection that queues and workers of one process share, and what speaks over it. */
export interface QueueLink {
  connection: ConnectionOptions;
  backend: BackendFactory;
  close(): Promise<void>;
}

interface LinkOptions {
  /** Fail at once when the other side is away, instead of waiting for it. */
  failFast: boolean;
  /** Most connections, where there is more than one. */
  maxConnections: number;
}

/** The one place that decides what the queues stand on. */
export function linkTo(
  { databaseUrl, redisUrl }: QueuePlace,
  options: LinkOptions,
  onTrouble: (error: Error) => void,
): QueueLink {
  return redisUrl ? redisLink(redisUrl, options, onTrouble) : postgresLink(databaseUrl, options, onTrouble);
}

function redisLink(url: string, { failFast }: LinkOptions, onTrouble: (error: Error) => void): QueueLink {
  const waiting = { maxRetriesPerRequest: null };
  const failingFast = { maxRetriesPerRequest: 1, enableOfflineQueue: false, commandTimeout: 5_000 };
  const redis = new Redis(url, {
    ...(failFast ? failingFast : waiting),
    retryStrategy: (tried) => Math.min(tried * 100, 2_000),
  });
  redis.on('error', onTrouble);
  return {
    connection: redis,
    backend: createRedisBackend,
    close: async () => redis.disconnect(),
  };
}

function postgresLink(url: string, { maxConnections }: LinkOptions, onTrouble: (error: Error) => void): QueueLink {
  const options = '-c search_path=bullmq'; // a pool that is handed over has to find the queues' own tables by itself
  const pool = new pg.Pool({
    connectionString: url,
    max: maxConnections,
    options,
    keepAlive: true,
    connectionTimeoutMillis: 10_000,
  });
  pool.setMaxListeners(50);
  pool.on('error', onTrouble);
  // The pool hears idle connections only; one that is in use when the server dies would end the process.
  pool.on('connect', (client) => client.on('error', onTrouble));
  return {
    // BullMQ types its classes for Redis unless each is told otherwise; both backends take what their own factory reads.
    connection: pool,
    backend: createPostgresBackend as BackendFactory,
    close: () => pool.end(),
  };
}
