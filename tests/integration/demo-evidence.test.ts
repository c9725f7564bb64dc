/** The demo's evidence is such as the service would have written it, and its record is earned. */
import { afterAll, beforeAll, expect, test } from 'vitest';
import { createDemoApp, type Demo } from '#tests/support/demo.ts';

let demo: Demo;
beforeAll(async () => {
  demo = await createDemoApp();
}, 400_000);
afterAll(() => demo.close());

test('the record beats the most frequent cause, and says what it says truthfully', async () => {
  const { body } = await demo.viewer.get('/api/v1/evidence/record');
  expect(body.cases).toBeGreaterThan(1_200);
  expect(body.better).toBe('better');
  expect(body.advantage.interval.low).toBeGreaterThan(0.2);
  expect(body.calibrationError).toBeLessThan(0.05);
  expect(body.agreement.pairs).toBeGreaterThan(50);
  expect(body.byPlant).toHaveLength(5);
});

test('what was learned is what was decided', async () => {
  const decided = await demo.db.prisma.confirmation.findMany();
  const versions = await demo.db.prisma.learnedVersion.findMany();
  expect(versions.reduce((sum, { cases }) => sum + cases, 0)).toBe(decided.length);
  const told = decided.flatMap(({ answers }) =>
    Object.values(answers as Record<string, string>).filter((answer) => answer !== 'could_not_tell'),
  );
  const learned = await demo.db.prisma.learnedAnswer.findMany();
  expect(learned.reduce((sum, { yes, no }) => sum + yes + no, 0)).toBe(told.length);
  for (const { probabilities } of decided.slice(0, 50))
    expect(probabilities.reduce((sum, p) => sum + p, 0)).toBeCloseTo(1, 9);
});

test('each decision names the cause its report has, after the findings were taken', async () => {
  const decided = await demo.db.prisma.confirmation.findMany();
  const reports = new Map(
    (await demo.db.prisma.failure.findMany({ where: { id: { in: decided.map(({ failureId }) => failureId) } } })).map(
      (report) => [report.id, report],
    ),
  );
  const findings = await demo.db.prisma.finding.groupBy({ by: ['failureId'], _max: { takenAt: true }, _count: true });
  const taken = new Map(findings.map((row) => [row.failureId, row]));
  const wrong = decided.filter(
    ({ failureId, cause, at, taken: count }) =>
      reports.get(failureId)!.cause !== cause ||
      taken.get(failureId)!._count !== count ||
      taken.get(failureId)!._max.takenAt! > at,
  );
  expect(wrong).toEqual([]);
  const unreasoned = decided.filter(({ cause, suggested, reason }) => cause !== suggested && !reason);
  expect(unreasoned).toEqual([]);
});

test('a decided report shows its decision, a waiting one its next check', async () => {
  const [decided] = await demo.db.prisma.confirmation.findMany({ take: 1, orderBy: { id: 'desc' } });
  const { body } = await demo.viewer.get(`/api/v1/failures/${decided!.failureId}/evidence`);
  expect(body.decision).toMatchObject({ cause: decided!.cause, suggested: decided!.suggested });
  expect(body.suggestion.model).toMatchObject({ basis: 'learned', muted: false });
  const waiting = await demo.db.prisma.finding.findMany({
    where: { failureId: { notIn: (await demo.db.prisma.confirmation.findMany()).map(({ failureId }) => failureId) } },
    take: 1,
  });
  expect(waiting).toHaveLength(1);
  const open = (await demo.viewer.get(`/api/v1/failures/${waiting[0]!.failureId}/evidence`)).body;
  expect(open.decision).toBeNull();
  expect(open.suggestion.nextChecks.length).toBeGreaterThan(0);
});
