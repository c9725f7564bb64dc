/**
 * The "rule of ten": each gate that a fault passes multiplies its cost about tenfold. Common practice, no source: a
 * yardstick to show beside the plant's own escalation factors, never a measurement.
 *
 * @param stagesLater how many of the plant's stages after the base stage
 */
export const ruleOfTen = (stagesLater: number): { factor: number; basis: 'common_practice' } => ({
  factor: 10 ** stagesLater,
  basis: 'common_practice',
});
