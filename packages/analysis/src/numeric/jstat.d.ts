/** The part of jstat that is used here; the package ships no types. */
declare module 'jstat' {
  const jstat: {
    gamma: { inv(probability: number, shape: number, scale: number): number };
    normal: { inv(probability: number, mean: number, deviation: number): number };
    lowRegGamma(shape: number, x: number): number;
    gammaln(x: number): number;
    erfc(x: number): number;
  };
  export default jstat;
}
