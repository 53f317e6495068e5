import type { MethodEntity, SpecimenEntity } from '#libs/records/src/index.js';
import { jobReference, releaseOf } from './release.js';

const at = (time: string) => new Date(`2026-11-25T${time}:00Z`);
const specimen = (fields: object) =>
  ({ fate: 'arrived', arrivedAt: at('08:00'), conditioningFrom: null, ...fields }) as SpecimenEntity;
const method = (hours: number | null) =>
  ({ data: { conditioning: hours === null ? null : { hours } } }) as unknown as MethodEntity;

describe('the release of a batch', () => {
  it('waits for the last specimen and its conditioning', () => {
    const pieces = [specimen({}), specimen({ arrivedAt: at('09:00'), conditioningFrom: at('10:30') })];
    expect(releaseOf(pieces, method(16))).toEqual(new Date('2026-11-26T02:30:00Z')); // 10:30 and 16 h
    expect(releaseOf(pieces, method(null))).toEqual(at('10:30'));
  });

  it('is open while one is expected, and does not wait for an invalid one', () => {
    expect(releaseOf([specimen({}), specimen({ fate: 'expected', arrivedAt: null })], method(0))).toBeNull();
    expect(releaseOf([specimen({}), specimen({ fate: 'invalid', arrivedAt: null })], method(0))).toEqual(at('08:00'));
  });
});

it('names a job after its request and batch', () => {
  expect(jobReference('R-2031', 2)).toBe('J-2031-2');
});
