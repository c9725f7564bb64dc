/** Output nobody asked for fails the test that caused it. A test that expects some silences it with `vi.spyOn(console, …)`. */
import { format } from 'node:util';
import { afterAll, afterEach } from 'vitest';

const noise: string[] = [];

for (const level of ['error', 'warn'] as const) {
  console[level] = (...values: unknown[]) => {
    noise.push(`console.${level}: ${format(...values)}`);
  };
}
process.on('warning', (warning) => {
  noise.push(`process warning: ${warning.stack ?? warning.message}`);
});

function failOnNoise() {
  if (noise.length > 0) throw new Error(`unexpected output\n${noise.splice(0).join('\n')}`);
}
afterEach(failOnNoise);
afterAll(failOnNoise);
