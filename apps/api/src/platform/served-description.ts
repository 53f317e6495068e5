import { existsSync } from 'node:fs';
import { join } from 'node:path';
import type { RequestHandler } from 'express';
import { projectRoot } from './project-root.js';

/** The API's own description; the build has written it. */
export function servedDescription(file = join(projectRoot(), 'dist', 'description', 'openapi.json')): RequestHandler {
  if (!existsSync(file)) throw new Error('The description of the API is missing. Run `npm run build`.');
  return (_, response) => response.sendFile(file);
}
