import { spawnSync } from 'node:child_process';
import { startLab } from '../support/lab.js';
import type { Lab } from '../support/lab.js';

interface Operation {
  operationId: string;
  responses: Record<string, unknown>;
}

describe('the description of the API', () => {
  let lab: Lab;
  let described: { paths: Record<string, Record<string, Operation>> };

  beforeAll(async () => {
    lab = await startLab({ worker: false });
    described = (await lab.visitor().get('/openapi.json')).body;
  });
  afterAll(() => lab.stop());

  it('is valid OpenAPI', () => {
    expect(flawsIn(described)).toBe('');
  });

  it('has every endpoint of the code, under a name of its own, and tells how each refuses', () => {
    const operations = Object.values(described.paths).flatMap((path) => Object.values(path));
    const names = operations.map(({ operationId }) => operationId);
    expect(new Set(names).size).toBe(names.length);
    const told = lab.endpoints.filter(({ path }) => !path.startsWith('/session/sign-on'));
    expect(operations).toHaveLength(told.length);
    expect(operations.filter(({ responses }) => !('422' in responses && '403' in responses))).toEqual([]);
  });
});

/**
 * What @apidevtools/swagger-parser finds, which checks against the OpenAPI Initiative's own schema of version 3.0. It runs in a
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
