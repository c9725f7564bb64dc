/** Something the person who starts the product can mend. The message is one line and says what to do; no stack is shown. */
export class StartError extends Error {
  override readonly name = 'StartError';
}

export function messageOf(error: unknown): string {
  if (error instanceof AggregateError && !error.message) return error.errors.map(messageOf).join('; ');
  return error instanceof Error ? error.message : String(error);
}

export function codeOf(error: unknown): string | undefined {
  if (typeof error !== 'object' || error === null || !('code' in error)) return undefined;
  return typeof error.code === 'string' ? error.code : undefined;
}
