import { inJsonSchema } from './json-schema.js';

describe('a schema in the words of OpenAPI 3.1', () => {
  it('says by its type that something may be null', () => {
    expect(inJsonSchema({ type: 'string', nullable: true })).toEqual({ type: ['string', 'null'] });
    expect(inJsonSchema({ allOf: [{ $ref: '#/a' }], nullable: true, description: 'd' })).toEqual({
      description: 'd',
      anyOf: [{ allOf: [{ $ref: '#/a' }] }, { type: 'null' }],
    });
    expect(inJsonSchema({ type: 'string', nullable: false })).toEqual({ type: 'string' });
  });

  it('leaves a field alone that is called nullable', () => {
    const schema = { type: 'object', properties: { nullable: { type: 'string' } } };
    expect(inJsonSchema(schema)).toEqual(schema);
  });

  it('states a limit that is not allowed itself as a number', () => {
    const above = { type: 'number', minimum: 0, exclusiveMinimum: true, maximum: 9 };
    expect(inJsonSchema(above)).toEqual({ type: 'number', exclusiveMinimum: 0, maximum: 9 });
  });
});
