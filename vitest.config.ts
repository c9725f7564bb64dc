import { defineConfig } from 'vitest/config';
import { findBrowser } from './scripts/find-browser.ts';

const setupFiles = ['tests/support/no-noise.ts'];
const globalSetup = ['tests/support/database-setup.ts'];
/** A zone with daylight saving and a three-quarter-hour offset: code that leans on the machine's zone fails here. */
const env = { TZ: 'Pacific/Chatham' };

/** Without a browser the suite is left out, and `npm test` says so before it begins; CI insists on one. */
const canBrowse = Boolean(findBrowser() || process.env.CI);

const project = (name: string, groupOrder: number, test: object) => ({
  extends: true as const,
  test: { name, setupFiles, sequence: { groupOrder }, ...test },
});

export default defineConfig({
  test: {
    pool: 'forks',
    reporters: ['default', './scripts/closing-line.ts'],
    projects: [
      project('unit', 0, {
        env,
        include: [
          'packages/**/*.test.{ts,tsx}',
          'apps/**/*.test.{ts,tsx}',
          'scripts/**/*.test.ts',
          'tests/architecture/**/*.test.ts',
        ],
      }),
      project('published', 0, { env, include: ['tests/published/**/*.test.ts'] }),
      project('integration', 1, {
        env,
        globalSetup,
        include: ['tests/integration/**/*.test.ts'],
        testTimeout: 30_000,
        hookTimeout: 60_000,
      }),
      project('seed', 2, {
        env,
        globalSetup,
        include: ['seed/**/*.test.ts'],
        testTimeout: 120_000,
        hookTimeout: 180_000,
      }),
      project('browser', 3, {
        globalSetup,
        include: canBrowse ? ['tests/browser/**/*.test.ts'] : [],
        // a busy machine can be late for a browser once; what is wrong fails again
        retry: process.env.CI ? 1 : 0,
        fileParallelism: false,
        testTimeout: 120_000,
        hookTimeout: 180_000,
      }),
      project('faults', 4, {
        include: ['tests/faults/**/*.test.ts'],
        fileParallelism: false,
        testTimeout: 180_000,
        hookTimeout: 180_000,
      }),
    ],
  },
});
