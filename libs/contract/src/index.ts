export * from './states.js';
export * from './platform.js';
export * from './register.js';
export * from './requests.js';
export * from './plan.js';
export * from './bench.js';
export * from './results.js';
export * from './reports.js';
