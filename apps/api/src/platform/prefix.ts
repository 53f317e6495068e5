/** Where the API lies. */
export const PREFIX = 'api/v1';
/** Asked for by what watches over processes, which knows no version. */
export const WITHOUT_PREFIX = ['health/live', 'health/ready'] as const;
