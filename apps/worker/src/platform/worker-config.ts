/** Where a processor asks for the settings of the process it runs in. */
export const WORKER_CONFIG = Symbol('worker configuration');
