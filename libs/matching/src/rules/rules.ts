import { calibrationInForce } from './calibration-in-force.js';
import { cellBand } from './cell-band.js';
import { cellCapacity } from './cell-capacity.js';
import { cellWithinFrame } from './cell-within-frame.js';
import { channels } from './channels.js';
import { couplings } from './couplings.js';
import { faceSuits } from './face-suits.js';
import { frameCapacity } from './frame-capacity.js';
import { frameState } from './frame-state.js';
import { guarding } from './guarding.js';
import { qualification } from './qualification.js';
import type { Rule } from './rule.js';
import { specimenFit } from './specimen-fit.js';
import { speed } from './speed.js';
import { strain } from './strain.js';
import { temperature } from './temperature.js';
import { testSpace } from './test-space.js';
import { travel } from './travel.js';
import { utilities } from './utilities.js';
import { verifiedRange } from './verified-range.js';
import { weakestLink } from './weakest-link.js';

/** The lab's rulebook, top to bottom. A train is a candidate when nothing of it fails. A new rule is a file and a line here. */
const RULEBOOK = [
  frameCapacity,
  cellWithinFrame,
  cellCapacity,
  weakestLink,
  verifiedRange,
  calibrationInForce,
  cellBand,
  couplings,
  testSpace,
  travel,
  speed,
  specimenFit,
  faceSuits,
  temperature,
  strain,
  channels,
  utilities,
  guarding,
  frameState,
  qualification,
] as const;

export type RuleCode = (typeof RULEBOOK)[number]['code'];
export const RULES: readonly Rule<RuleCode>[] = RULEBOOK;
