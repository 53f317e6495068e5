// Writes dist/description/: the API's description, and types for programs that call it. Run by the build, from the project's folder.
import 'reflect-metadata';
import { mkdirSync, readdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { NestFactory } from '@nestjs/core';
import { SystemClock } from '#libs/calendar/src/index.js';
import { LabRecords } from '#libs/records/src/index.js';
import { DataSource } from 'typeorm';
import { Log } from '#libs/hosting/src/index.js';
import { AppModule } from '../app.module.js';
import { readConfig } from '../config.js';
import { PREFIX, WITHOUT_PREFIX } from '../platform/prefix.js';
import { answersIn } from './answers.js';
import { clientTypes } from './client-types.js';
import { describeApi } from './describe-api.js';

const ROOT = process.cwd();
const SOURCES = join('apps', 'api', 'src');
const EXAMPLES = join(SOURCES, 'description', 'examples');
const OUT = join('dist', 'description');

const names = readdirSync(SOURCES, { recursive: true, encoding: 'utf8' }).sort();
const controllers = names.filter((name) => name.endsWith('.controller.ts')).map((name) => join(SOURCES, name));
const examples = Object.fromEntries(
  readdirSync(EXAMPLES)
    .sort()
    .map((name) => [basename(name, '.json'), JSON.parse(readFileSync(join(EXAMPLES, name), 'utf8')) as unknown]),
);

// Nothing is asked of the database, and nothing listens: it is only looked at.
const config = readConfig({ DATABASE_URL: 'postgres://nobody@localhost/none', LOG: 'quiet' });
const log = new Log(config.log, 'api');
const root = AppModule.around(config, new LabRecords(new DataSource({ type: 'postgres' }), new SystemClock()), log);
const app = await NestFactory.create(root, { logger: log, preview: true, abortOnError: false });
app.setGlobalPrefix(PREFIX, { exclude: [...WITHOUT_PREFIX] });
const description = describeApi(app, answersIn(ROOT, controllers), examples);

mkdirSync(OUT, { recursive: true });
put('operations.ts', clientTypes(description));
put('openapi.json', JSON.stringify(description));

/** Written beside and renamed, so that a process that starts meanwhile never reads half a file. */
function put(name: string, text: string): void {
  const beside = join(OUT, `${name}.${process.pid}`);
  writeFileSync(beside, text);
  renameSync(beside, join(OUT, name));
}
