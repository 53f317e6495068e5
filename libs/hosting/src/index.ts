export { clockFrom, clockSetting } from './clock.js';
export { address, instant, neededAddress, oneOf, readSettings, text, wholeNumber } from './settings.js';
export type { Setting } from './settings.js';
export { Log, LOG_LEVELS } from './log.js';
export type { LogLevel } from './log.js';
