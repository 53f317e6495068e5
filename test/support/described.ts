import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import type { ValidateFunction } from 'ajv/dist/2020.js';
import type { Description, Operation } from '#apps/api/src/description/describe-api.js';
import type { Schema } from '#apps/api/src/description/schema.js';
import { isDay, isId, isInstant } from '#apps/api/src/platform/fields.js';
import { projectRoot } from './maybe.js';

const PREFIX = '/api/v1';
export const JSON_TYPES = /^application\/(problem\+)?json/;

/** The description of the API, as the build has written it and the API serves it. */
export function description(): Description {
  return JSON.parse(readFileSync(join(projectRoot(), 'dist', 'description', 'openapi.json'), 'utf8')) as Description;
}

/** Where a value is not as its description says; empty when it is. */
export type Flaws = (value: unknown) => string[];

/**
 * Checks by ajv, which knows nothing of ours. It is stricter than the description: fields that are not described count as flaws, so that
 * the description cannot fall behind.
 *
 * @returns for a schema of the document what is wrong with a value
 */
export function checkerOf(document: Description): (schema: Schema) => Flaws {
  const ajv = new Ajv2020({ strict: false, allErrors: true });
  ajv.addFormat('date-time', isInstant).addFormat('date', isDay).addFormat('uuid', isId);
  const schemas = closed(document.components.schemas);
  ajv.addSchema({ $id: 'api', components: { schemas } });
  const known = new Map<string, ValidateFunction>();
  return (schema) => {
    const text = JSON.stringify(closed(schema)).replaceAll('"#/components', '"api#/components');
    const check = known.get(text) ?? ajv.compile(JSON.parse(text) as object);
    known.set(text, check);
    return (value) => {
      if (check(value)) return [];
      return (check.errors ?? []).map(({ instancePath, message, params }) =>
        `${instancePath || '/'} ${message} ${JSON.stringify(params)}`.slice(0, 300),
      );
    };
  };
}

/** Judges the JSON answers of the API by the description. */
export class DescribedAnswers {
  private readonly document = description();
  private readonly check = checkerOf(this.document);
  private readonly places = Object.entries(this.document.paths).flatMap(([path, methods]) =>
    Object.entries(methods).map(([method, operation]) => ({
      method: method.toUpperCase(),
      operation,
      ...placed(path),
    })),
  );

  /**
   * @param path below `/api/v1`, as it was asked for
   * @param body what the JSON of the answer says; undefined where there was none
   * @returns where the answer is not as described, in words
   */
  flawsIn(method: string, path: string, status: number, body: unknown): string[] {
    const operation = this.operationAt(method, new URL(`${PREFIX}${path}`, 'http://lab').pathname);
    if (!operation) return [];
    const { responses, operationId } = operation;
    const told = responses[status] ?? (status >= 400 ? responses['default'] : undefined);
    if (!told) return [`${operationId} answers ${status}, which is not described.`];
    const content = Object.entries(told.content ?? {});
    const [, described] = content.find(([type]) => JSON_TYPES.test(type)) ?? [];
    if (content.length > 0 && !described) return []; // a file
    if (body === undefined)
      return described && status < 400 ? [`${operationId} answers ${status} without what is described.`] : [];
    if (!described) return [`${operationId} answers ${status} with something, where nothing is described.`];
    return this.check(described.schema ?? {})(body).map((flaw) => `${operationId} ${status}: ${flaw}`);
  }

  /** Fixed words in a path go before places in it. */
  private operationAt(method: string, path: string): Operation | undefined {
    return this.places
      .filter((place) => place.method === method && place.pattern.test(path))
      .sort((a, b) => a.open - b.open)[0]?.operation;
  }
}

function placed(path: string): { pattern: RegExp; open: number } {
  const parts = path.split(/\{\w+\}/);
  const pattern = parts.map((part) => part.replace(/[.\\]/g, '\\$&')).join('[^/]+');
  return { pattern: new RegExp(`^${pattern}$`), open: parts.length };
}

/** Refuses fields that are not described, at every depth. */
function closed<Part>(part: Part): Part {
  if (Array.isArray(part)) return part.map(closed) as Part;
  if (typeof part !== 'object' || part === null) return part;
  const inner = Object.fromEntries(Object.entries(part).map(([name, value]) => [name, closed(value)])) as Schema;
  const shut = inner.type === 'object' && inner.properties !== undefined && inner.additionalProperties === undefined;
  return (shut ? { ...inner, additionalProperties: false } : inner) as Part;
}
