import type { INestApplication } from '@nestjs/common';
import { DocumentBuilder, SwaggerModule } from '@nestjs/swagger';
import type { OpenAPIObject } from '@nestjs/swagger';

const PROBLEM = {
  type: 'object',
  description: 'Problem details by RFC 9457.',
  required: ['type', 'title', 'status', 'detail'],
  properties: {
    type: { type: 'string', description: 'Stable; tells programs what happened.', example: '/problems/input/invalid' },
    title: { type: 'string' },
    status: { type: 'integer' },
    detail: { type: 'string', description: 'What was found, what is allowed, what to do.' },
    instance: { type: 'string' },
    errors: { type: 'array', items: { $ref: '#/components/schemas/FieldError' } },
    facts: { type: 'object', additionalProperties: true },
  },
} as const;

const FIELD_ERROR = {
  type: 'object',
  required: ['field', 'found', 'allowed', 'sentence'],
  properties: Object.fromEntries(
    ['field', 'found', 'allowed', 'unit', 'sentence'].map((name) => [name, { type: 'string' }]),
  ),
} as const;

const REFUSALS = {
  '401': 'Not signed in.',
  '403': 'Not for this role.',
  '404': 'Nothing there, or not for this person to see.',
  '409': 'Not as things stand.',
  '422': 'A field is not as it may be.',
};

/** The API's description, from the code. */
export function describeApi(app: INestApplication): OpenAPIObject {
  const head = new DocumentBuilder()
    .setTitle('Loadtrain')
    .setDescription(
      'Test requests and scheduling for a materials test lab. Units are in the names of fields; instants are UTC.',
    )
    .setVersion('1')
    .addCookieAuth('lab-session', { type: 'apiKey', in: 'cookie' }, 'session')
    .addBearerAuth({ type: 'http', scheme: 'bearer' }, 'token')
    .addSecurityRequirements('session')
    .addSecurityRequirements('token')
    .build();
  const document = SwaggerModule.createDocument(app, head, {
    operationIdFactory: (controller, method) => `${controller.replace('Controller', '')}_${method}`,
  });
  document.components = {
    ...document.components,
    schemas: { ...document.components?.schemas, Problem: PROBLEM as never, FieldError: FIELD_ERROR as never },
  };
  for (const path of Object.values(document.paths)) Object.values(path).forEach(addRefusals);
  return document;
}

function addRefusals(operation: unknown): void {
  const responses = (operation as { responses?: Record<string, unknown> } | null)?.responses;
  if (!responses) return;
  const content = { 'application/problem+json': { schema: { $ref: '#/components/schemas/Problem' } } };
  for (const [status, description] of Object.entries(REFUSALS)) responses[status] ??= { description, content };
}
