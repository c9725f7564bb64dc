import { describe, expect, it } from 'vitest';
import { gatesPassed } from './gates-passed.ts';

describe('gatesPassed', () => {
  it('counts the stages between origin and found', () => {
    expect(gatesPassed(4, 10)).toBe(5);
    expect(gatesPassed(4, 5)).toBe(0);
    expect(gatesPassed(4, 4)).toBe(0);
  });

  it('counts only gates that the plant has', () => {
    expect(gatesPassed(2, 10, [2, 4, 6, 10])).toBe(2);
  });

  it('is unknown without an origin, and when found before it', () => {
    expect(gatesPassed(null, 6)).toBeNull();
    expect(gatesPassed(6, 4)).toBeNull();
  });
});
