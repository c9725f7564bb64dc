import { describe, expect, it } from 'vitest';
import { compareWithPrevious } from './compare-with-previous.ts';

const bar = (key: string, now: number, before: number, exposure: number | null = 1_000_000) => ({
  key,
  now: { failures: now, exposure },
  before: { failures: before, exposure },
});

describe('compareWithPrevious', () => {
  it('names what moved and in which direction', () => {
    const changes = compareWithPrevious([bar('risen', 90, 40), bar('fallen', 20, 70), bar('steady', 50, 52)]);
    expect(changes.map((change) => change.verdict)).toEqual(['up', 'down', 'not_beyond_noise']);
    expect(changes[0]).toMatchObject({ measure: 'rate_ratio', ratio: 2.25, reason: null });
  });

  it('judges shares where production is not known: a doubling of everything moves none of them', () => {
    const changes = compareWithPrevious([bar('a', 200, 100, null), bar('b', 100, 50, null), bar('c', 300, 150, null)]);
    expect(changes.map((change) => change.verdict)).toEqual(Array(3).fill('not_beyond_noise'));
    expect(changes.every((change) => change.measure === 'share_odds_ratio')).toBe(true);
  });

  it('says why a bar cannot be compared', () => {
    const changes = compareWithPrevious([bar('silent', 0, 0), bar('alive', 3, 4)]);
    expect(changes[0]).toMatchObject({ verdict: null, ratio: null, reason: 'no_reports' });
    expect(compareWithPrevious([bar('new', 5, 0, null)])[0]).toMatchObject({ verdict: null, reason: 'no_reports' });
  });

  it('gives a bar that was not there before a lower limit only', () => {
    const [change] = compareWithPrevious([bar('new', 12, 0)]);
    expect(change).toMatchObject({ ratio: null, verdict: 'up', reason: null });
    expect(change!.interval).toMatchObject({ high: null });
    expect(change!.interval!.low).toBeGreaterThan(1);
  });

  it('holds chance back: of many equal bars, one nominally significant difference is not called', () => {
    const steady = Array.from({ length: 19 }, (_, i) => bar(`steady ${i}`, 50, 50));
    const [alone] = compareWithPrevious([bar('odd', 68, 42)]);
    const [among] = compareWithPrevious([bar('odd', 68, 42), ...steady]);
    expect(alone!.verdict).toBe('up');
    expect(among!.verdict).toBe('not_beyond_noise');
  });
});
