import type { Method } from '#libs/matching/src/index.js';
import type { Work } from './people.js';

/** The kind of work that a method belongs to, by which people are trained. */
export function workOf({ testType, direction, materialGroups }: Method): Work {
  if (direction === 'torque') return 'torsion';
  if (testType === 'component' && materialGroups[0] === 'metal') return 'parts';
  if (testType === 'fracture') return 'heavy';
  switch (materialGroups[0]) {
    case 'metal':
      return 'metals';
    case 'composite':
      return 'composites';
    case 'adhesive':
      return 'bonds';
    case 'elastomer':
    case 'foam':
      return 'rubber-and-foam';
    case 'textile':
    case 'film':
    case 'packaging':
      return 'textiles';
    case 'plastic':
      return 'plastics';
    default:
      return 'heavy';
  }
}
