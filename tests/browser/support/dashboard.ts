/** The built dashboard in a real browser, served by the real service on a database of its own. */
import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { type Browser, type BrowserContextOptions, chromium, type Page } from 'playwright-core';
import { expect } from 'vitest';
import { hashPassword } from '#api/platform/passwords.ts';
import type { Role } from '#contracts/permissions.ts';
import type { Locale } from '#contracts/shared/scalars.ts';
import { createTestApp, type TestApp } from '#tests/support/app.ts';
import { findBrowser } from '../../../scripts/find-browser.ts';

const built = fileURLToPath(new URL('../../../apps/web/dist/index.html', import.meta.url));
const quiet = [
  '--no-sandbox',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

interface Visit {
  /** Plant ids the role is for; all plants where none are given. */
  plants?: readonly string[];
  locale?: Locale;
  /** px */
  width?: number;
}

export interface Dashboard {
  it: TestApp;
  address: string;
  /** A page of a stranger. */
  visit(options?: Visit): Promise<Page>;
  /** A page of a new person who is signed in with the role. */
  signIn(role: Role, options?: Visit): Promise<Page>;
  /** An account with a password, for tests of the sign-in page itself. */
  account(options?: { mustChangePassword?: boolean }): Promise<{ id: string; email: string; password: string }>;
  /** Closes everything; fails if any page reported an error. */
  close(): Promise<void>;
}

async function launch(): Promise<Browser> {
  const executablePath = findBrowser();
  if (!executablePath) throw new Error('No Chromium found: install it, or set CHROMIUM to its path.');
  if (!existsSync(built)) throw new Error('The dashboard is not built: npm run test:browser builds it.');
  return chromium.launch({ executablePath, args: quiet });
}

export async function openDashboard(options?: { now?: string }): Promise<Dashboard> {
  const browser = await launch();
  const it = await createTestApp(options);
  const address = await it.app.listen({ port: 0, host: '127.0.0.1' });
  const complaints: string[] = [];

  const open = async ({ locale = 'en', width = 1280 }: Visit, cookie?: string): Promise<Page> => {
    const settings: BrowserContextOptions = {
      baseURL: address,
      locale,
      viewport: { width, height: 900 },
      reducedMotion: 'reduce',
    };
    const context = await browser.newContext(settings);
    if (cookie) {
      const [name = '', value = ''] = cookie.split('=');
      await context.addCookies([{ name, value, url: address }]);
    }
    const page = await context.newPage();
    await page.clock.setFixedTime(it.time.now);
    page.on('pageerror', (error) => complaints.push(`${page.url()}: ${error.message}`));
    page.on('console', (message) => {
      // Chromium itself reports every refused request; tests of refusals look at the page instead.
      const refused = message.text().startsWith('Failed to load resource');
      if (message.type() === 'error' && !refused) complaints.push(`${page.url()}: ${message.text()}`);
    });
    return page;
  };

  return {
    it,
    address,
    visit: (visit = {}) => open(visit),
    signIn: async (role, visit = {}) => {
      const person = await it.as(role, visit.plants, visit.locale);
      return open(visit, person.cookie);
    },
    account: async ({ mustChangePassword = false } = {}) => {
      const { id } = await it.as('engineer');
      const password = 'long enough for a test';
      await it.db.prisma.person.update({
        where: { id },
        data: { passwordHash: await hashPassword(password), mustChangePassword },
      });
      return { id, email: `${id}@test.invalid`, password };
    },
    close: async () => {
      await browser.close();
      await it.close();
      expect(complaints).toEqual([]);
    },
  };
}
