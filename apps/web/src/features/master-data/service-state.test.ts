import { describe, expect, it } from 'vitest';
import { cyclesLeft, serviceState } from './service-state.ts';

const tool = (cycleCount: number, serviceInterval: number | null = 1000) => ({
  cycleCount,
  serviceInterval,
  servicedAtCount: 5000,
});

describe('service of a tool', () => {
  it('is counted from the last one', () => {
    // 5000 + 1000 − 5400
    expect(cyclesLeft(tool(5400))).toBe(600);
    expect(cyclesLeft(tool(6100))).toBe(-100);
    expect(cyclesLeft(tool(6100, null))).toBeNull();
  });
  it('is good, due soon in the last tenth, and overdue from the first cycle on', () => {
    expect([5400, 5899, 5900, 5999, 6000, 6100].map((count) => serviceState(tool(count)))).toEqual([
      'good',
      'good',
      'soon',
      'soon',
      'overdue',
      'overdue',
    ]);
    expect(serviceState(tool(1, null))).toBe('none');
  });
});
