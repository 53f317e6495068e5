/** Where a service asks for the settings of the process it runs in. */
export const API_CONFIG = Symbol('api configuration');
