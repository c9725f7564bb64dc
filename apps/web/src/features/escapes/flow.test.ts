import { describe, expect, it } from 'vitest';
import { flowOf } from './flow.ts';
import { matrixOf } from './matrix.ts';

const counts = (reports: number) => ({ reports, terminals: reports, bookedMinor: 0, estimateMinor: 0 });
const matrix = matrixOf([
  { origin: 'insertion', found: 'insertion', ...counts(40) },
  { origin: 'insertion', found: 'field', ...counts(10) },
  { origin: 'receiving', found: 'field', ...counts(1) },
  { origin: null, found: 'field', ...counts(9) },
]);
const space = { along: 1000, across: 400, margin: 50, upright: false };

describe('flow picture', () => {
  const flow = flowOf(matrix, 'reports', space);

  it('draws an arc for every escape with a known origin, widest first', () => {
    expect(flow.arcs.map(({ cell }) => [cell.origin, cell.found])).toEqual([
      ['insertion', 'field'],
      ['receiving', 'field'],
    ]);
    // 10 of at most 40 reports: a quarter of the widest band, 34 px.
    expect(flow.arcs[0]?.width).toBe(8.5);
  });
  it('lays the ten stages evenly along the line', () => {
    expect(flow.spots.map(({ at }) => at)).toEqual([50, 150, 250, 350, 450, 550, 650, 750, 850, 950]);
    expect(flow.spots[3]?.here?.reports).toBe(40);
  });
  it('rises higher the further the fault came, and stays inside its room', () => {
    const [six, nine] = flow.arcs;
    expect(nine?.top.y).toBeLessThan(six?.top.y ?? 0);
    for (const { top } of flow.arcs) expect(top.y).toBeGreaterThan(0);
  });
  it('has no arcs where nothing weighs anything', () => {
    expect(flowOf(matrix, 'booked', space).arcs).toEqual([]);
  });
});
