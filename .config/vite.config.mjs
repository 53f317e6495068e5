// The web page: built into dist/web, which the API serves. Pure libs are imported from source, as everywhere else.
import react from '@vitejs/plugin-react';
import { dirname, join } from 'node:path';
import { defineConfig } from 'vite';

const root = dirname(import.meta.dirname);
const api = process.env.LOADTRAIN_API ?? 'http://127.0.0.1:3000';

export default defineConfig({
  root: join(root, 'apps/web'),
  cacheDir: join(root, 'node_modules/.vite'),
  plugins: [react()],
  resolve: { conditions: ['source', 'module', 'browser', 'development|production'] },
  css: { modules: { localsConvention: 'camelCase' } },
  build: { outDir: join(root, 'dist/web'), emptyOutDir: true, assetsInlineLimit: 0, target: 'es2022' },
  // The host stays as the browser sent it: the API refuses what comes from another page.
  server: { host: '127.0.0.1', proxy: { '/api': { target: api, changeOrigin: false } } },
});
