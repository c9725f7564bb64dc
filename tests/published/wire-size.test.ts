import { describe, expect, it } from 'vitest';
import { awgDiameterMm, awgName, awgToMm2, mm2ToAwg, nearestAwg } from '#contracts/wire-size.ts';
import { expectRelative, reference } from './reference.ts';

const gauges = reference<{ awg: number[] }, Record<string, { d_mm: number; area_mm2: number }>>('14-awg');

describe(gauges.title, () => {
  it.each(gauges.input.awg)('gives gauge %i', (awg) => {
    const expected = gauges.expected[String(awg)]!;
    expectRelative(awgDiameterMm(awg), expected.d_mm, 1e-9);
    expectRelative(awgToMm2(awg), expected.area_mm2, 1e-9);
    expect(mm2ToAwg(expected.area_mm2)).toBeCloseTo(awg, 8);
    expect(nearestAwg(expected.area_mm2)).toBe(awgName(awg));
  });
  // Common practice, no source: metric automotive wire and the gauge it is sold as.
  it.each([
    [0.35, '22'],
    [0.5, '20'],
    [0.75, '18'],
    [2.5, '13'],
    [107.2, '4/0'],
  ])('%f mm² is nearest to gauge %s', (mm2, name) => {
    expect(nearestAwg(mm2)).toBe(name);
  });
  it('names no gauge beyond the table', () => {
    expect(nearestAwg(1000)).toBeNull();
    expect(nearestAwg(0.0001)).toBeNull();
  });
});
