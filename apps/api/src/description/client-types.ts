import type { Description, Operation, Parameter } from './describe-api.js';
import { referred } from './schema.js';
import type { Schema } from './schema.js';
import { keyText, typeText } from './type-text.js';

const PREFIX = '/api/v1';
const RAW = 'Blob';
/** What a call says beside its parameters. */
const TAKEN_NAMES = ['body', 'version'];

/**
 * The description as types for a program that calls the API: every schema under its name, and `Operations`, which has an entry
 * `'POST /jobs/{id}/tick'` with parameters, body and answer for each operation below the prefix.
 *
 * @throws Error when two parameters of an operation have the same name
 */
export function clientTypes({ paths, components }: Description): string {
  const sent = sentNames(paths, components.schemas);
  const schemas = Object.entries(components.schemas).map(
    ([name, schema]) => `export type ${name} = ${typeText(schema, sent.has(name) ? 'sent' : 'answered')};`,
  );
  const operations = Object.entries(paths)
    .filter(([path]) => path.startsWith(PREFIX))
    .flatMap(([path, methods]) =>
      Object.entries(methods).map(
        ([method, operation]) => `  '${method.toUpperCase()} ${path.slice(PREFIX.length)}': ${entryOf(operation)};`,
      ),
    );
  const head = '// Made from the description of the API by `npm run types`; a spec compares the two.';
  return [head, ...schemas, 'export interface Operations {', ...operations, '}', ''].join('\n');
}

function entryOf({ operationId, parameters, requestBody, responses }: Operation): string {
  const given = parameters.filter((parameter) => parameter.in !== 'header');
  const names = [...given.map(({ name }) => name), ...TAKEN_NAMES];
  if (new Set(names).size < names.length) throw new Error(`${operationId} has two parameters of the same name.`);
  const [takes = 'undefined'] = Object.entries(requestBody?.content ?? {}).map(([type, { schema }]) =>
    type === 'application/json' ? typeText(schema ?? {}, 'sent') : RAW,
  );
  const done = Object.values(responses)[0]?.content ?? {};
  const [gives = 'undefined'] = Object.values(done).map(({ schema }) => typeText(schema ?? {}, 'answered'));
  const versioned = parameters.some(({ name }) => name === 'If-Match');
  const fields = [
    `parameters: { ${given.map(parameterOf).join('; ')} }`,
    `body: ${takes}`,
    `answer: ${gives}`,
    `versioned: ${versioned}`,
  ];
  return `{ ${fields.join('; ')} }`;
}

/** What may be left out may be empty as well, and one value will do for a list. */
function parameterOf({ name, required, schema, in: place }: Parameter): string {
  if (place === 'path') return `${keyText(name)}: string | number`;
  const one = schema.type === 'array' ? [typeText(schema.items || {}, 'sent')] : [];
  const type = [...one, typeText(schema, 'sent')].join(' | ');
  return required ? `${keyText(name)}: ${type}` : `${keyText(name)}?: ${type} | '' | null`;
}

/** Names of all schemas that bodies are made of. */
function sentNames(paths: Description['paths'], schemas: Readonly<Record<string, Schema>>): Set<string> {
  const found = new Set<string>();
  const visit = (part: unknown): void => {
    if (typeof part !== 'object' || part === null) return;
    const name = referred(part);
    if (name !== null && !found.has(name)) {
      found.add(name);
      visit(schemas[name]);
    }
    Object.values(part).forEach(visit);
  };
  for (const methods of Object.values(paths)) for (const { requestBody } of Object.values(methods)) visit(requestBody);
  return found;
}
