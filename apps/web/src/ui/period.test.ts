import { describe, expect, it } from 'vitest';
import { dayIn, fullWeeks, startOfWeek } from './period.ts';

describe('reporting weeks', () => {
  it('start on the plant’s own day', () => {
    // 2026-11-25 is a Wednesday.
    expect(startOfWeek('2026-11-25')).toBe('2026-11-23');
    expect(startOfWeek('2026-11-23')).toBe('2026-11-23');
    expect(startOfWeek('2026-11-25', 7)).toBe('2026-11-22');
    expect(startOfWeek('2026-11-22', 1)).toBe('2026-11-16');
  });

  it('are counted back from the running week, which is left out', () => {
    expect(fullWeeks('2026-11-25', 1)).toEqual({ from: '2026-11-16', to: '2026-11-23' });
    expect(fullWeeks('2026-11-25', 13)).toEqual({ from: '2026-08-24', to: '2026-11-23' });
  });

  it('follow the plant’s clock, not the reader’s', () => {
    const at = new Date('2026-11-22T23:30:00Z');
    expect(dayIn('Asia/Tokyo', at)).toBe('2026-11-23');
    expect(dayIn('America/Chicago', at)).toBe('2026-11-22');
  });
});
