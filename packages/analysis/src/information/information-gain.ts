/** Entropy in bits of weights that need not add up to 1 (counts or probabilities). Source: Shannon C.E. (1948). */
export function entropyBits(weights: readonly number[]): number {
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  return weights.reduce((sum, weight) => (weight > 0 ? sum - (weight / total) * Math.log2(weight / total) : sum), 0);
}

/**
 * How many bits an answer is expected to tell about the class: H(class) - Σ P(answer) H(class | answer).
 * Sources: Lindley D.V. (1956) Ann. Math. Stat. 27:986-1005; Quinlan J.R. (1986) Machine Learning 1:81-106.
 *
 * @param joint counts or probabilities, joint[answer][class]
 */
export function informationGain(joint: readonly (readonly number[])[]): number {
  const total = joint.flat().reduce((sum, weight) => sum + weight, 0);
  const classes = (joint[0] ?? []).map((_, place) => joint.reduce((sum, row) => sum + row[place]!, 0));
  const after = joint.reduce((sum, row) => {
    const weight = row.reduce((rowSum, value) => rowSum + value, 0);
    return weight > 0 ? sum + (weight / total) * entropyBits(row) : sum;
  }, 0);
  return entropyBits(classes) - after;
}
