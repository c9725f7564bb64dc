/** The printed review: two pages at most, whatever the week, language and paper. */
import { mkdirSync, writeFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { printSheet } from '#api/features/review/document/sheet.ts';
import { ReviewContent } from '#contracts/review-content.ts';
import { locales, papers } from '#contracts/shared/scalars.ts';
import { emptyContent, fullContent, reviewWith } from '#tests/support/review.ts';

const weeks = { fullest: fullContent(), emptiest: emptyContent() };
const cases = locales.flatMap((locale) =>
  papers.flatMap((paper) => (['fullest', 'emptiest'] as const).map((week) => ({ locale, paper, week }))),
);

test.each(cases)('the $week week fits two pages in $locale on $paper', async ({ locale, paper, week }) => {
  const { bytes, pages } = await printSheet(reviewWith(ReviewContent.parse(weeks[week])), locale, paper);
  const folder = process.env.SHEETS_TO;
  if (folder) {
    mkdirSync(folder, { recursive: true });
    writeFileSync(`${folder}/${week}-${locale}-${paper}.pdf`, bytes);
  }
  expect(bytes.subarray(0, 5).toString()).toBe('%PDF-');
  expect(pages).toBeLessThanOrEqual(2);
  // The page tree says how many pages there are (ISO 32000-1, 7.7.3).
  expect(bytes.toString('latin1')).toMatch(new RegExp(`/Type /Pages[^>]*/Count ${pages}|/Count ${pages}[^>]*`));
});
