import type { DemoRequest } from './demo-request.js';
import { AWAITED } from './requests-awaited.js';
import { ON_THE_DESK } from './requests-desk.js';
import { IN_WORK } from './requests-in-work.js';
import { OVER_OR_TESTED } from './requests-over.js';
import { PLANNED } from './requests-planned.js';

/** What lies on the lab's desk at the start; what is older is in `history.ts`. */
export const REQUESTS: readonly DemoRequest[] = [...OVER_OR_TESTED, ...IN_WORK, ...PLANNED, ...AWAITED, ...ON_THE_DESK];
