/**
 * American Wire Gauge of solid round wire, as defined by ASTM B258: 36 AWG is 0.005 inch across, 0000 (4/0) is 0.46 inch,
 * and the 39 steps between them are equal ratios. Gauges 2/0, 3/0 and 4/0 are the numbers -1, -2 and -3.
 */
const smallestMm = 0.127;
const ratio = 92;

/** Diameter in mm of the gauge number. */
export const awgDiameterMm = (awg: number): number => smallestMm * ratio ** ((36 - awg) / 39);

/** Cross-section in mm² of the gauge number. */
export const awgToMm2 = (awg: number): number => (Math.PI / 4) * awgDiameterMm(awg) ** 2;

/** Gauge number of a cross-section in mm², as a real number; thicker wire has the smaller number. */
export const mm2ToAwg = (mm2: number): number =>
  36 - (39 * Math.log(Math.sqrt((4 * mm2) / Math.PI) / smallestMm)) / Math.log(ratio);

/** How the trade writes a gauge number: 20, 0 as 1/0, -1 as 2/0. */
export const awgName = (awg: number): string => (awg <= 0 ? `${1 - awg}/0` : String(awg));

/** The nearest whole gauge of a cross-section in mm², in the trade's writing; null beyond 4/0 and 50. */
export const nearestAwg = (mm2: number): string | null => {
  const awg = Math.round(mm2ToAwg(mm2));
  return awg < -3 || awg > 50 ? null : awgName(awg);
};
