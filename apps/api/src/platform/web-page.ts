import { existsSync } from 'node:fs';
import { extname, join } from 'node:path';
import express from 'express';
import type { RequestHandler } from 'express';
import { projectRoot } from './project-root.js';

const NO_SCREENS = /^\/(api|health|metrics)(\/|$)/;
const A_YEAR_S = 31_536_000;

/**
 * Serves the built web page. Its files carry a hash in their names and may be kept for ever; the page itself is asked for anew
 * each time, and answers every address that is a screen. A file that was compressed when it was built is sent so.
 */
export function webPage(folder = join(projectRoot(), 'dist', 'web')): RequestHandler[] {
  if (!existsSync(join(folder, 'index.html'))) return [];
  const files = express.static(folder, {
    index: false,
    redirect: false,
    setHeaders: (response, path) => response.setHeader('Cache-Control', cacheOf(path)),
  });
  return [compressed(folder), files, screens(folder)].map(unlessService);
}

/** Most of what is asked is no file: the disk is not looked at for it. */
function unlessService(handler: RequestHandler): RequestHandler {
  return (request, response, next) => {
    if (NO_SCREENS.test(request.path)) next();
    else void handler(request, response, next);
  };
}

function compressed(folder: string): RequestHandler {
  return (request, response, next) => {
    const path = request.path;
    const takes = /\bgzip\b/.test(String(request.headers['accept-encoding']));
    if (!takes || !/^\/assets\/[\w.-]+\.(js|css|svg)$/.test(path) || !existsSync(join(folder, `${path}.gz`)))
      return next();
    response.setHeader('Content-Encoding', 'gzip').setHeader('Vary', 'Accept-Encoding').type(extname(path));
    request.url = `${path}.gz`;
    next();
  };
}

function screens(folder: string): RequestHandler {
  return (request, response, next) => {
    const isScreen = request.method === 'GET' && extname(request.path) === '';
    if (!isScreen) return next();
    response.setHeader('Cache-Control', 'no-cache').sendFile(join(folder, 'index.html'));
  };
}

function cacheOf(path: string): string {
  return path.includes('/assets/') ? `public, max-age=${A_YEAR_S}, immutable` : 'no-cache';
}
