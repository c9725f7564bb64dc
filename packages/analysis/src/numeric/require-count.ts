/** Throws a RangeError unless the value is a whole number >= 0: a count that is not one is a mistake in the calling code. */
export function requireCount(name: string, value: number): void {
  if (!Number.isSafeInteger(value) || value < 0) {
    throw new RangeError(`${name} must be a whole number of 0 or more, not ${value}.`);
  }
}

/** Throws a RangeError unless 0 < confidence < 1. */
export function requireConfidence(confidence: number): void {
  if (!(confidence > 0 && confidence < 1)) {
    throw new RangeError(`confidence must lie between 0 and 1, not ${confidence}.`);
  }
}
