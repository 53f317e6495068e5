import ts from 'typescript';
import type { Schema } from './schema.js';
import { TypeSchemas } from './type-schemas.js';

const FILE = '/lab/shapes.ts';

/** What `Asked` of a source becomes, with the schemas that it refers to. */
function schemasOf(text: string): { asked: Schema; named: Record<string, Schema> } {
  const source = ts.createSourceFile(FILE, text, ts.ScriptTarget.ES2022, true);
  const host = ts.createCompilerHost({});
  const getSourceFile: typeof host.getSourceFile = (name, ...rest) =>
    name === FILE ? source : host.getSourceFile(name, ...rest);
  const options = { strict: true, types: [], lib: ['lib.es2022.d.ts'] };
  const program = ts.createProgram({ rootNames: [FILE], options, host: { ...host, getSourceFile } });
  const checker = program.getTypeChecker();
  const schemas = new TypeSchemas(checker, (name) => name === FILE);
  const declared = source.statements.find((one) => ts.isInterfaceDeclaration(one) && one.name.text === 'Asked');
  schemas.of(checker.getTypeAtLocation(declared!));
  const { Asked, ...named } = schemas.named;
  return { asked: Asked!, named };
}

const fieldOf = (type: string, before = '') =>
  schemasOf(`${before} export interface Asked { field: ${type} }`).asked.properties!['field'];

describe('a type as a schema', () => {
  it('says which fields are there always, and what the comment says of them', () => {
    expect(schemasOf('export interface Asked {\n/** N. */\npeakForceN: number; note?: string }').asked).toEqual({
      type: 'object',
      properties: { peakForceN: { type: 'number', description: 'N.' }, note: { type: 'string' } },
      required: ['peakForceN'],
    });
  });

  it('tells instants from other texts', () => {
    expect(fieldOf('Instant | null', 'type Instant = string;')).toEqual({
      type: ['string', 'null'],
      format: 'date-time',
    });
    expect(fieldOf('Instant[]', 'type Instant = string;')).toEqual({
      type: 'array',
      items: { type: 'string', format: 'date-time' },
    });
    expect(fieldOf('string | null')).toEqual({ type: ['string', 'null'] });
  });

  it('gathers choices', () => {
    expect(fieldOf("'each' | 'mean'")).toEqual({ type: 'string', enum: ['each', 'mean'] });
    expect(fieldOf("'each' | null")).toEqual({ type: ['string', 'null'], enum: ['each', null] });
    expect(fieldOf('boolean | null')).toEqual({ type: ['boolean', 'null'] });
  });

  it('refers to types with a name, also to themselves and to pages of them', () => {
    const { asked, named } = schemasOf(`
      interface Row { inner: Row | null }
      interface Page<Of> { rows: Of[] }
      export interface Asked { page: Page<Row> }`);
    expect(asked.properties).toEqual({ page: { $ref: '#/components/schemas/PageOfRow' } });
    expect(named['PageOfRow']!.properties!['rows']).toEqual({
      type: 'array',
      items: { $ref: '#/components/schemas/Row' },
    });
    expect(named['Row']!.properties!['inner']).toEqual({
      anyOf: [{ $ref: '#/components/schemas/Row' }, { type: 'null' }],
    });
  });

  it('keeps the length of a row of a fixed number of values, and the free names of a record', () => {
    const runs = { type: 'array', prefixItems: [{ type: 'number' }, { type: 'number' }] };
    expect(fieldOf('[number, number]')).toEqual({ ...runs, items: false, minItems: 2, maxItems: 2 });
    expect(fieldOf('Record<string, number>')).toEqual({ type: 'object', additionalProperties: { type: 'number' } });
    expect(fieldOf('Record<string, unknown>')).toEqual({ type: 'object', additionalProperties: {} });
  });

  it('refuses what JSON cannot carry', () => {
    expect(() => fieldOf('() => void')).toThrow('no form in JSON');
    expect(() => fieldOf('bigint')).toThrow('no form in JSON');
  });
});
