export type * from './item.js';
export type * from './method.js';
export type * from './material.js';
export type * from './ask.js';
export type * from './needs.js';
export type * from './answer.js';
export type * from './lab.js';
export type { MatchSettings } from './settings.js';
export { DEFAULT_SETTINGS } from './settings.js';
