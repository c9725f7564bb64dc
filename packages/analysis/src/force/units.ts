/** Newtons in one pound-force, exact. Source: NIST Special Publication 811 (2008), appendix B.8. */
const newtonsPerPoundForce = 4.4482216152605;

export type ForceUnit = 'N' | 'lbf';

/** Force in newtons. */
export const toNewtons = (value: number, unit: ForceUnit): number =>
  unit === 'N' ? value : value * newtonsPerPoundForce;

/** Force in another unit, from newtons. */
export const fromNewtons = (newtons: number, unit: ForceUnit): number =>
  unit === 'N' ? newtons : newtons / newtonsPerPoundForce;
