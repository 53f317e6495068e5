import { maybe } from '../support/maybe.js';
import { withoutRedis } from '../support/redis.js';
import { killAnything } from './kill-anything.js';

describe('with parts killed at any moment under load', () => {
  it('nothing acknowledged is lost and nothing is done twice, queues on PostgreSQL', async () => {
    const { rounds, acknowledged, faults } = await killAnything({ rounds: 3, seed: 20, redis: false });
    expect(faults).toEqual([]);
    expect(rounds).toHaveLength(3);
    expect(acknowledged).toBeGreaterThan(10);
  }, 300_000);

  maybe(withoutRedis())(
    'nothing acknowledged is lost and nothing is done twice, queues on Redis',
    async () => {
      const { acknowledged, faults } = await killAnything({ rounds: 3, seed: 11, redis: true });
      expect(faults).toEqual([]);
      expect(acknowledged).toBeGreaterThan(10);
    },
    300_000,
  );
});
