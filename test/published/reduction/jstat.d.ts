/** The few functions of the peer library that the specs compare with; it brings no types of its own. */
declare module 'jstat' {
  const jstat: {
    normal: { cdf(x: number, mean: number, sd: number): number };
    studentt: { cdf(x: number, degreesOfFreedom: number): number };
    noncentralt: { cdf(x: number, degreesOfFreedom: number, noncentrality: number): number };
  };
  export default jstat;
}
