import { rm } from 'node:fs/promises';

export default async function stopDatabase() {
  const { postgres, folder } = globalThis.loadtrainDatabase;
  postgres.stop();
  await rm(folder, { recursive: true, force: true });
}
