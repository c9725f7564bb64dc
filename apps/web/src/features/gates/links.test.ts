import { describe, expect, it } from 'vitest';
import { linksOf, withPointCost } from './links.ts';

const head = {
  period: { from: '2026-03-01', to: '2026-06-01' },
  maturity: { until: '2026-06-01', reported: 0.3, reason: null, pattern: 40, withBuildDate: 4, withoutBuildDate: 1 },
};

describe('the reports of a gate', () => {
  const links = linksOf('lead_storage', { cause: ['handling'], from: '2020-01-01', to: '2021-01-01' }, head);
  it('are those made there or before', () => {
    expect(links.foundHere).toEqual({
      cause: ['handling'],
      from: '2026-03-01',
      to: '2026-06-01',
      origin: ['receiving', 'termination', 'lead_storage'],
      found: ['lead_storage'],
    });
    expect(links.foundLater.found).toHaveLength(7);
  });
  it('from the field are chosen by the day built', () => {
    expect(links.fieldBuilt).toMatchObject({
      builtFrom: '2026-03-01',
      built: true,
      found: ['field'],
      to: '2026-06-01',
    });
    expect(links.fieldBuilt).not.toHaveProperty('from');
  });
});

it('the cost of one gate replaces the one before', () => {
  expect(withPointCost(['insertion:5', 'lock_check:7'], 'insertion', 9)).toEqual(['lock_check:7', 'insertion:9']);
  expect(withPointCost(['insertion:5'], 'insertion', undefined)).toBeUndefined();
});
