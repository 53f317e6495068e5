import type { NestExpressApplication } from '@nestjs/platform-express';

const GRACE_MS = 5_000;

/** Takes nothing new and lets what is under way end. Who is still sending after a while, such as a stuck upload, is cut off. */
export async function closeApi(api: NestExpressApplication): Promise<void> {
  const cut = setTimeout(() => api.getHttpServer().closeAllConnections(), GRACE_MS);
  await api.close().finally(() => clearTimeout(cut));
}
