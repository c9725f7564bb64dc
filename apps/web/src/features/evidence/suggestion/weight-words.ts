/**
 * Plain words for a log likelihood ratio (natural log). Steps of the ratio: 1.5, 3, 10, 30, after the scale of Jeffreys H.,
 * Theory of Probability, appendix B (√10, 10, 10^1.5; from memory), with a step for what says next to nothing.
 */
export type WeightWords = 'neither' | `${'for' | 'against'}.${'decisive' | 'strong' | 'clear' | 'slight'}`;

const steps = [
  [30, 'decisive'],
  [10, 'strong'],
  [3, 'clear'],
  [1.5, 'slight'],
] as const;

export function weightWords(logRatio: number): WeightWords {
  const ratio = Math.exp(Math.abs(logRatio));
  const step = steps.find(([least]) => ratio >= least);
  return step ? `${logRatio > 0 ? 'for' : 'against'}.${step[1]}` : 'neither';
}
