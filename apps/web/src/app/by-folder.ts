/** `{'/src/features/week/messages.en.ts': m}` → `{week: m}`. */
export const byFolder = <Value>(files: Record<string, Value>): Record<string, Value> =>
  Object.fromEntries(Object.entries(files).map(([path, value]) => [path.split('/').at(-2) ?? path, value]));
