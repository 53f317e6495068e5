/** Everybody of the demo lab signs in with it, and the sign-in page says so. A lab of one's own starts without it. */
export const DEMO_PASSWORD = 'northmoor-demo';
