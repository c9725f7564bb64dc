import { describe, expect, it } from 'vitest';
import type { StandardCost } from '#contracts/master-data.ts';
import { type CostKey, changedCells, datesOf, inEffect } from './standard-costs.ts';

const row = (validFrom: string, terminalMinor: number, fields: Partial<StandardCost> = {}): StandardCost => ({
  id: validFrom,
  plantId: 'p',
  stage: 'field',
  disposition: 'replaced',
  validFrom,
  terminalMinor,
  version: 3,
  retiredAt: null,
  ...fields,
});
const rows = [
  row('2026-01-01', 100),
  row('2026-04-01', 200),
  row('2026-02-01', 900, { retiredAt: '2026-02-02T00:00:00Z' }),
];
const key: CostKey = 'field replaced';

describe('standard costs', () => {
  it('hold from their day until the next', () => {
    const on = (day: string) => inEffect(rows, day).get(key)?.terminalMinor;
    expect(['2025-12-31', '2026-01-01', '2026-03-31', '2026-04-01'].map(on)).toEqual([undefined, 100, 100, 200]);
    expect(datesOf(rows)).toEqual(['2026-04-01', '2026-01-01']);
  });
  it('send only what differs on the day', () => {
    const sent = (day: string, minor: number | undefined) => changedCells(rows, day, new Map([[key, minor]]));
    const cell = { stage: 'field', disposition: 'replaced' };
    expect(sent('2026-04-01', 200)).toEqual([]);
    expect(sent('2026-04-01', 250)).toEqual([{ ...cell, terminalMinor: 250, version: 3 }]);
    expect(sent('2026-05-01', 250)).toEqual([{ ...cell, terminalMinor: 250, version: null }]);
    expect(sent('2026-04-01', undefined)).toEqual([{ ...cell, terminalMinor: null, version: 3 }]);
    expect(sent('2026-05-01', undefined)).toEqual([]);
  });
});
