import type { INestApplication } from '@nestjs/common';
import { DocumentBuilder, SwaggerModule } from '@nestjs/swagger';
import { operationId } from './answers.js';
import type { Answer, Answers } from './answers.js';
import { inJsonSchema } from './json-schema.js';
import { referenceTo, referred } from './schema.js';
import type { Schema } from './schema.js';

/** An OpenAPI 3.1 document, as far as ours goes. */
export interface Description {
  openapi: string;
  paths: Record<string, Record<string, Operation>>;
  components: { schemas: Record<string, Schema>; examples?: Record<string, { value: unknown }> };
}

export interface Operation {
  operationId: string;
  description?: string;
  parameters: Parameter[];
  requestBody?: { required?: boolean; content: Record<string, Content> };
  responses: Record<string, { description: string; content?: Record<string, Content> }>;
}

export interface Parameter {
  name: string;
  in: 'path' | 'query' | 'header';
  required?: boolean;
  description?: string;
  schema: Schema;
}

export interface Content {
  schema?: Schema;
  examples?: Record<string, { $ref: string } | { value: unknown }>;
}

const JSON_TYPE = 'application/json';
const PROBLEM = { 'application/problem+json': { schema: referenceTo('Problem') } };

const REFUSALS = {
  '401': 'Not signed in.',
  '403': 'Not for this role.',
  '404': 'Nothing there, or not for this person to see.',
  '409': 'Not as things stand.',
  '422': 'A field is not as it may be.',
  default: 'Any other refusal.',
};

const ONCE: Parameter = {
  name: 'Idempotency-Key',
  in: 'header',
  required: false,
  description: 'A key of the sender’s own for this one act: a repeated try with it gets the first answer again.',
  schema: { type: 'string', minLength: 8, maxLength: 128 },
};

/**
 * The API's description: paths and bodies from the framework, answers from the types in the sources, examples by the name of what
 * they are examples of.
 *
 * @throws Error when an operation's answer is not known
 */
export function describeApi(
  app: INestApplication,
  { answers, schemas }: Answers,
  examples: Readonly<Record<string, unknown>>,
): Description {
  const head = new DocumentBuilder()
    .setOpenAPIVersion('3.1.0')
    .setTitle('Loadtrain')
    .setDescription(
      'Test requests and scheduling for a materials test lab. Units are in the names of fields; instants are UTC. ' +
        'A change that is asked for with the session cookie carries the header X-Lab-Page with any value.',
    )
    .setVersion('1')
    .addCookieAuth('lab-session', { type: 'apiKey', in: 'cookie' }, 'session')
    .addBearerAuth({ type: 'http', scheme: 'bearer' }, 'token')
    .addSecurityRequirements('session')
    .addSecurityRequirements('token')
    .build();
  const drawn: object = SwaggerModule.createDocument(app, head, { operationIdFactory: operationId });
  const document = inJsonSchema(drawn as Description);
  document.components.schemas = { ...document.components.schemas, ...schemas };
  document.components.examples = Object.fromEntries(
    Object.entries(examples).map(([name, value]) => [name, { summary: 'From the Northmoor lab.', value }]),
  );
  for (const methods of Object.values(document.paths))
    for (const [method, operation] of Object.entries(methods)) {
      if (method === 'post') operation.parameters.push(ONCE);
      addAnswer(operation, answers[operation.operationId]);
      addExamples(operation, examples);
    }
  return document;
}

function addAnswer(operation: Operation, answer: Answer | undefined): void {
  if (!answer) throw new Error(`What ${operation.operationId} answers with was not found in its source.`);
  const { schema, produces, about } = answer;
  if (about !== '') operation.description = about;
  const [done] = Object.values(operation.responses);
  if (!done) throw new Error(`${operation.operationId} has no status for success.`);
  if (done.description === '') done.description = schema ? 'As asked.' : 'Done; there is nothing to answer.';
  const types = produces.length > 0 ? produces : [JSON_TYPE];
  if (schema) done.content = Object.fromEntries(types.map((type) => [type, { schema }]));
  for (const [status, description] of Object.entries(REFUSALS))
    operation.responses[status] ??= { description, content: PROBLEM };
}

/** A list is shown with one of what is in it. */
function addExamples({ requestBody, responses }: Operation, examples: Readonly<Record<string, unknown>>): void {
  for (const { content } of [requestBody ?? { content: {} }, ...Object.values(responses)]) {
    const json = content?.[JSON_TYPE];
    if (!json?.schema) continue;
    const name = referred(json.schema);
    const of = json.schema.items ? referred(json.schema.items) : null;
    if (name !== null && name in examples) json.examples = { northmoor: { $ref: `#/components/examples/${name}` } };
    else if (of !== null && of in examples) json.examples = { northmoor: { value: [examples[of]] } };
  }
}
