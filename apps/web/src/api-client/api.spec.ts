import { api } from './api.js';

describe('a call of the API', () => {
  it('puts parameters that have a place into the address, and the others into the query', () => {
    expect(api('GET /items/{id}/impact', { id: 'a b/c', since: '2026-11-25T08:00:00Z' })).toEqual({
      verb: 'GET',
      path: '/items/a%20b%2Fc/impact?since=2026-11-25T08%3A00%3A00Z',
    });
  });

  it('leaves out what is empty, and says a list one by one', () => {
    const { path } = api('GET /requests', { state: ['submitted', 'returned'], q: '', mine: null });
    expect(path).toBe('/requests?state=submitted&state=returned');
    expect(api('GET /requests').path).toBe('/requests');
  });

  it('carries body and version beside the address', () => {
    const body = { title: 'Fork crown, batch 7' };
    expect(api('PATCH /reports/{id}', { id: 'r', body, version: 3 })).toEqual({
      ...{ verb: 'PATCH', path: '/reports/r', body, version: 3 },
    });
  });
});
