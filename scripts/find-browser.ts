import { existsSync } from 'node:fs';

const usual = [
  process.env.CHROMIUM,
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
];

/** The browser that the browser tests drive: CHROMIUM, or one in a usual place; undefined when there is none. */
export function findBrowser(): string | undefined {
  return usual.find((path) => path && existsSync(path));
}
