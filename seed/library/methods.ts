import type { Method } from '#libs/matching/src/index.js';
import { BRITTLE_AND_COMPONENT_METHODS } from './methods/brittle-component.js';
import { COMPOSITE_METHODS } from './methods/composites.js';
import { JOINT_METHODS } from './methods/joints-textiles.js';
import { METAL_METHODS } from './methods/metals.js';
import { PLASTIC_METHODS } from './methods/plastics.js';
import { SOFT_METHODS } from './methods/soft.js';

/**
 * The methods that a lab starts with. Check the edition in force before a figure of these goes on a report: `from memory` means that
 * nobody has compared it with the text of the standard since.
 */
export const METHODS: readonly Method[] = [
  ...METAL_METHODS,
  ...PLASTIC_METHODS,
  ...COMPOSITE_METHODS,
  ...SOFT_METHODS,
  ...JOINT_METHODS,
  ...BRITTLE_AND_COMPONENT_METHODS,
];
