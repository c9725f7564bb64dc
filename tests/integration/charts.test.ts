import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { noStrainRelief } from '#seed/scenario/no-strain-relief.ts';
import { pullCheck } from '#seed/scenario/pull-check.ts';
import { wornApplicator } from '#seed/scenario/worn-applicator.ts';
import { createDemoApp, type Demo, daysBefore } from '#tests/support/demo.ts';

let demo: Demo;
beforeAll(async () => {
  demo = await createDemoApp();
}, 240_000);
afterAll(() => demo.close());

const ask = (query: Record<string, string | number>) => demo.ask('analyses/charts', query);
const between = (from: number, to: number) => ({ from: daysBefore(from), to: daysBefore(to) });
const lineOf = (plant: string, line: string) => ({
  plant: demo.id(`plant ${plant}`),
  line: demo.id(`line ${plant} ${line}`),
});

interface Point {
  key: string;
  from: string;
  to: string;
  reports: number;
  report: { id: string } | null;
  rules: string[];
  phase: number;
  centre: number;
}

describe('the chart that suits the data', () => {
  test('a large volume: u with the correction, each week opening as many reports as it shows', async () => {
    const chart = await ask({ plant: demo.id('plant SUZ'), cause: 'probe_damage', ...between(365, 1) });
    expect(chart).toMatchObject({ kind: 'u', corrected: true, reason: null });
    expect(chart.suggested).toMatchObject({ because: 'enough_with_exposure' });
    expect(chart.suggested.dispersionIndex).toBeGreaterThan(1);
    const weeks = chart.points as Point[];
    expect(weeks.reduce((sum, { reports }) => sum + reports, 0)).toBe(chart.reports);
    const { from, to, reports } = weeks.find((point) => point.rules.includes('sudden_jump'))!;
    const list = await demo.ask('failures/count', { plant: demo.id('plant SUZ'), cause: 'probe_damage', from, to });
    expect(list.reports).toBe(reports);
  });

  test('rare faults: terminals from one to the next; days where production is not known', async () => {
    const query = { ...lineOf('LEJ', 'L1'), cause: 'adhesive' };
    const chart = await ask({ ...query, ...between(500, 1) });
    expect(chart).toMatchObject({ kind: 'g', suggested: { because: 'rare_with_exposure' } });
    for (const point of chart.points as Point[])
      expect(point).toMatchObject({ reports: 1, report: { id: expect.any(String) } });
    expect(chart.points.length).toBe(chart.reports - 1);
    const days = await ask({ ...query, kind: 't', ...between(500, 1) });
    expect(days.points.map(({ report }: Point) => report!.id)).toEqual(
      chart.points.map(({ report }: Point) => report!.id),
    );
  });

  test('too many reports for gaps, none at all, no production: each says so', async () => {
    expect(await ask({ kind: 'g', ...between(91, 0) })).toMatchObject({ reason: 'too_many', points: [] });
    expect(await ask({ q: 'nowhere-to-be-found', ...between(91, 0) })).toMatchObject({
      kind: null,
      reason: 'no_reports',
    });
    const { weeksWithoutProduction } = await ask({ ...lineOf('TOL', 'L2'), ...between(91, 40) });
    expect(weeksWithoutProduction).toBeGreaterThan(2);
  });
});

describe('what was planted', () => {
  test('the worn applicator goes above the limit, and the replacement starts a new level when it is chosen as a phase', async () => {
    const { plant, line, replaced } = wornApplicator;
    const query = { ...lineOf(plant, line), cause: 'tooling', ...between(420, 60) };
    const frozen = await ask({ ...query, limits: 'frozen', points: 12 });
    const above = (frozen.points as Point[]).filter(({ rules }) => rules.includes('sudden_jump'));
    expect(above.length).toBeGreaterThan(2);
    expect(above.at(-1)!.from < daysBefore(replaced)).toBe(true);
    const split = await ask({ ...query, phaseFrom: daysBefore(replaced) });
    expect(split.phases).toHaveLength(2);
    expect(split.phases[1].because).toBe('chosen');
    expect(split.phases[1].centre).toBeLessThan(split.phases[0].centre / 2);
  });

  test('the fix that worked is seen by the cumulative sum, the one that did not is not', async () => {
    const worked = await ask({
      ...lineOf(pullCheck.plant, pullCheck.line),
      cause: 'partial_seat',
      ...between(420, 60),
      actions: 'false',
      limits: 'frozen',
      points: 20,
    });
    expect(worked.cusum).toMatchObject({ falseAlarmEvery: 370, reason: null });
    expect(worked.cusum.foundAfter).toBeLessThan(15);
    expect(worked.cusum.points.some(({ worse }: { worse: boolean | null }) => worse === false)).toBe(true);
    const split = await ask({
      ...lineOf(pullCheck.plant, pullCheck.line),
      cause: 'partial_seat',
      ...between(420, 60),
    });
    expect(split.phases.map(({ because }: { because: string }) => because)).toContain('action');
    expect(split.markers).toContainEqual(expect.objectContaining({ kind: 'action' }));
    const { plant, line, tieMoved } = noStrainRelief;
    const not = await ask({
      ...lineOf(plant, line),
      cause: 'wire_dress',
      ...between(420, 30),
      phaseFrom: daysBefore(tieMoved),
    });
    const [before, after] = not.phases.map(({ centre }: { centre: number }) => centre);
    expect(after / before).toBeGreaterThan(0.7);
    expect(after / before).toBeLessThan(1.5);
  });
});

describe('marks on the time axis', () => {
  test('services of the tools named and new lots, where the filter names something they belong to', async () => {
    const wide = await ask({ plant: demo.id('plant POZ') });
    expect(wide.left).toEqual({ service: 'too_wide', lot: 'too_wide' });
    const tool = await ask({ tool: demo.id('tool POZ AP-150-3'), ...between(200, 0) });
    expect(tool.left.service).toBeNull();
    const all = await demo.ask('tools', { plant: demo.id('plant POZ'), q: 'AP-150-3' });
    const { servicedOn } = all.items.find(({ code }: { code: string }) => code === 'AP-150-3');
    expect(tool.markers).toContainEqual(
      expect.objectContaining({ kind: 'service', day: servicedOn, label: 'AP-150-3' }),
    );
    const lot = await ask({ lot: 'R05-4471-X', ...between(150, 0) });
    expect(lot.markers).toContainEqual(expect.objectContaining({ kind: 'reelLot', label: 'R05-4471-X' }));
  });

  test('a service is added by the master data, and its day corrected there', async () => {
    const { body } = await demo.viewer.get('/api/v1/tools?limit=1');
    const [row] = body.items;
    const admin = await demo.as('administrator');
    const put = async (change: object, version: number) => {
      const { id, version: _, plantCode: _c, retiredAt: _r, due: _d, ...values } = row;
      return admin.put(`/api/v1/tools/${id}`, { ...values, ...change }, version);
    };
    const first = await put(
      { cycleCount: row.cycleCount + 10, servicedAtCount: row.cycleCount + 10, servicedOn: '2026-06-10' },
      row.version,
    );
    expect(first.status).toBe(200);
    const second = await put(
      { cycleCount: row.cycleCount + 10, servicedAtCount: row.cycleCount + 10, servicedOn: '2026-06-09' },
      row.version + 1,
    );
    expect(second.status).toBe(200);
    const { rows } = await demo.db.pool.query(
      'select serviced_on::text as day from tool_service where tool_id = $1 order by 1',
      [row.id],
    );
    expect(rows.map(({ day }) => day)).toEqual([row.servicedOn, '2026-06-09']);
  });
});
