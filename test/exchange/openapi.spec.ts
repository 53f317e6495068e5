import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Content, Description } from '#apps/api/src/description/describe-api.js';
import { referred } from '#apps/api/src/description/schema.js';
import { checkerOf, JSON_TYPES } from '../support/described.js';
import { startLab } from '../support/lab.js';
import type { Lab } from '../support/lab.js';
import { projectRoot } from '../support/maybe.js';

describe('the description of the API', () => {
  let lab: Lab;
  let described: Description;

  beforeAll(async () => {
    lab = await startLab({ worker: false });
    described = (await lab.visitor().get('/openapi.json')).body;
  });
  afterAll(() => lab.stop());

  it("is what the types of the page's calls were made from; `npm run types` makes them anew", () => {
    const text = (...path: string[]) => readFileSync(join(projectRoot(), ...path), 'utf8');
    expect(text('apps', 'web', 'src', 'api-client', 'operations.ts')).toBe(
      text('dist', 'description', 'operations.ts'),
    );
  });

  it('is valid OpenAPI', () => {
    expect(flawsIn(described)).toBe('');
  });

  it('has every endpoint of the code, under a name of its own, and tells how each refuses', () => {
    const operations = operationsIn(described);
    const names = operations.map(({ operationId }) => operationId);
    expect(new Set(names).size).toBe(names.length);
    const told = lab.endpoints.filter(({ path }) => !path.startsWith('/session/sign-on'));
    expect(operations).toHaveLength(told.length);
    expect(operations.filter(({ responses }) => !('422' in responses && '403' in responses))).toEqual([]);
  });

  it('tells what every operation answers with, and that nothing comes where nothing does', () => {
    const untold = operationsIn(described).filter(({ responses }) => {
      const [status, done] = Object.entries(responses)[0]!; // statuses of success come first
      return (done.content === undefined) !== (status === '204');
    });
    expect(untold.map(({ operationId }) => operationId)).toEqual([]);
  });

  it('shows an example of every body in JSON and of every answer that has a name', () => {
    const told = operationsIn(described).flatMap(({ operationId, requestBody, responses }) =>
      [requestBody?.content, Object.values(responses)[0]?.content].flatMap((content = {}) =>
        Object.entries(content)
          .filter(([type, { schema = {} }]) => type === 'application/json' && isNamed(schema))
          .map(([, { examples }]) => ({ operationId, examples })),
      ),
    );
    expect(told.length).toBeGreaterThan(150);
    expect(told.filter(({ examples }) => !examples).map(({ operationId }) => operationId)).toEqual([]);
  });

  it('shows examples that are as described themselves', () => {
    const flawsOf = checkerOf(described);
    const examples = Object.entries(described.components.examples ?? {});
    const flaws = examples.flatMap(([name, { value }]) =>
      flawsOf({ $ref: `#/components/schemas/${name}` })(value).map((flaw) => `${name}${flaw}`),
    );
    expect(examples.length).toBeGreaterThan(90);
    expect(flaws).toEqual([]);
  });

  it('refuses in the form that it describes', async () => {
    const flawsOf = checkerOf(described)({ $ref: '#/components/schemas/Problem' });
    const { body, headers } = await lab.visitor().post('/session', { email: 'nobody' });
    expect(headers.get('content-type')).toMatch(JSON_TYPES);
    expect(flawsOf(body)).toEqual([]);
    expect(flawsOf({ ...body, secret: 1 })).toHaveLength(1);
  });
});

function operationsIn({ paths }: Description) {
  return Object.values(paths).flatMap((path) => Object.values(path));
}

function isNamed({ items, ...schema }: NonNullable<Content['schema']>): boolean {
  return referred(schema) !== null || (items ? referred(items) !== null : false);
}

/**
 * What @apidevtools/swagger-parser finds, which checks against the OpenAPI Initiative's own schema of version 3.1. It runs in a
 * process of its own, because Jest cannot load it.
 */
function flawsIn(description: unknown): string {
  const script = `
    import SwaggerParser from '@apidevtools/swagger-parser';
    import { text } from 'node:stream/consumers';
    await SwaggerParser.validate(JSON.parse(await text(process.stdin))).catch((error) => console.log(error.message));`;
  const { stdout, status } = spawnSync(process.execPath, ['--input-type=module', '-e', script], {
    input: JSON.stringify(description),
    encoding: 'utf8',
    env: { ...process.env, NODE_OPTIONS: '' },
  });
  return status === 0 ? stdout : 'The validator did not run.';
}
