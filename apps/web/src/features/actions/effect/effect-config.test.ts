import { describe, expect, it } from 'vitest';
import { cleanPointAt } from './effect-config.ts';
import { filterOf } from './scope-filter.ts';

const week = (from: string, to: string) => ({ from, to, failures: 0, exposure: null, rate: null as never });
const weeks = [week('2026-01-05', '2026-01-12'), week('2026-01-12', '2026-01-19'), week('2026-01-19', '2026-01-26')];
const at = (cleanPoint: string) => cleanPointAt({ weeks, plan: { cleanPoint } as never });

describe('the clean point on the axis', () => {
  it('stands between two weeks where it begins one, on a week where it lies in it, after all when it is to come', () => {
    expect(at('2026-01-12')).toBe(0.5);
    expect(at('2026-01-14')).toBe(1);
    expect(at('2026-02-02')).toBe(2.5);
  });
});

it('a scope opens the list of its reports', () => {
  const scope = {
    cause: 'tooling',
    subCause: null,
    housingId: 'h',
    terminalId: null,
    toolId: 't',
    lineId: null,
    customerId: null,
    sources: ['field'],
  };
  expect(filterOf(scope as never, 'p')).toEqual({
    plant: ['p'],
    cause: ['tooling'],
    housing: ['h'],
    tool: ['t'],
    source: ['field'],
  });
});
