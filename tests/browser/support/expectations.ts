/** What every page must keep to: accessibility, and figures that open down to their reports. */
import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from 'playwright-core';
import { expect } from 'vitest';

/** Colours are judged as they come to rest: half-faded ones have too little contrast. */
const settled = (page: Page) =>
  page.evaluate(async () => {
    const ending = document.getAnimations().filter(({ effect }) => effect?.getComputedTiming().endTime !== Infinity);
    await Promise.allSettled(ending.map(({ finished }) => finished));
  });

/** No serious or critical violation of the rules that axe knows. */
export async function expectAccessible(page: Page): Promise<void> {
  await settled(page);
  const { violations } = await new AxeBuilder({ page }).analyze();
  const grave = violations
    .filter(({ impact }) => impact === 'serious' || impact === 'critical')
    .map(({ id, nodes }) => `${id}: ${nodes.map(({ target }) => target.join(' ')).join(', ')}`);
  expect(grave).toEqual([]);
}

/** Nothing sticks out of the window to the side. */
export async function expectToFit(page: Page): Promise<void> {
  expect(await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth)).toBeLessThanOrEqual(0);
}

interface Figure {
  text: string;
  query: string;
}

/** Every link of the part whose text is a whole number, with the query it opens the list of reports with. */
export async function figuresIn(page: Page, part: string): Promise<Figure[]> {
  return page.locator(part).evaluateAll((parts) =>
    parts
      .flatMap((it) => [...it.querySelectorAll('a[href^="/failures?"]')])
      .map((link) => ({
        text: (link.textContent ?? '').trim(),
        query: (link.getAttribute('href') ?? '').replace('/failures', ''),
      }))
      .filter(({ text }) => /^[\d,]+$/.test(text)),
  );
}

/** Asks the API for the count behind each figure and compares. */
export async function expectSameCounts(
  page: Page,
  figures: readonly Figure[],
  of: 'reports' | 'terminals' = 'reports',
): Promise<void> {
  expect(figures.length).toBeGreaterThan(0);
  for (const { text, query } of figures) {
    const answer = await page.request.get(`/api/v1/failures/count${query}`);
    const count = (await answer.json())[of];
    expect({ query, count }).toEqual({ query, count: Number(text.replaceAll(',', '')) });
  }
}
