import { afterAll, beforeAll, expect, test } from 'vitest';
import { type Asker, createTestApp, type TestApp } from '#tests/support/app.ts';
import { check, commit, map, upload } from '#tests/support/imports.ts';
import { makePlant, makeStages } from '#tests/support/master-data.ts';
import { reportBody } from '#tests/support/reports.ts';
import { sheetXml, text, workbook } from '#tests/support/workbook.ts';

let it: TestApp;
let plantId: string;
let engineer: Asker;
let first: { id: string; number: string; version: number };
let second: typeof first;

beforeAll(async () => {
  it = await createTestApp({ now: '2026-06-15T10:00:00Z' });
  plantId = (await makePlant(it.db, { code: 'LIS' })).id;
  await makeStages(it.db, plantId);
  engineer = await it.as('engineer', [plantId]);
  const record = async () => (await engineer.post('/api/v1/failures', reportBody(plantId))).body;
  first = await record();
  second = await record();
  await it.db.prisma.failure.updateMany({ where: { id: second.id }, data: { externalRef: 'LAB-7' } });
});
afterAll(() => it.close());

const findingsOf = async (id: string) =>
  (await engineer.get(`/api/v1/failures/${id}/evidence`)).body.findings
    .filter(({ source }: { source: string }) => source !== 'computed')
    .map(({ code, answer, value, unit, source }: Record<string, unknown>) => [code, answer, value, unit, source]);

const cells = (rows: string[][]) =>
  rows
    .map(
      (row, down) =>
        `<row r="${down + 1}">${row.map((it, at) => text(`${'ABCDE'[at]}${down + 1}`, it)).join('')}</row>`,
    )
    .join('');
const upFindings = async (file: string | Buffer) =>
  (await upload(engineer, file, { kind: 'findings', source: 'lab' })).body;

test('a workbook of findings, one a row, goes to reports that are there, by number or own reference; a repeat adds nothing', async () => {
  const book = (depth: string) =>
    workbook({
      Lab: sheetXml(
        cells([
          ['Plant', 'Report', 'Finding', 'Answer'],
          ['LIS', first.number, 'probe_mark', 'yes'],
          ['LIS', first.number, 'Wire leaves at a sharp angle', '70/45 deg'],
          ['LIS', 'LAB-7', 'force_below_minimum', depth],
        ]),
      ),
    });
  const job = await upFindings(book('5/10 lbf'));
  expect(job.columns.map((it: { suggestion: string }) => it.suggestion)).toEqual([
    'plant',
    'report',
    'finding',
    'answer',
  ]);
  const checked = await check(engineer, job);
  expect(checked).toMatchObject({
    state: 'checked',
    outcome: { rows: 3, added: 3, changed: 0, skipped: 0, refused: 0 },
  });
  expect(await findingsOf(first.id)).toEqual([]);
  await commit(engineer, checked);
  expect(await findingsOf(first.id)).toEqual([
    ['probe_mark', 'yes', null, null, 'import'],
    ['sharp_exit', 'yes', 70, 'deg', 'import'],
  ]);
  expect(await findingsOf(second.id)).toEqual([['force_below_minimum', 'yes', 22.2411, 'N', 'import']]);
  const again = await check(engineer, await upFindings(book('5/10 lbf')));
  expect(again.outcome).toMatchObject({ added: 0, changed: 0, skipped: 3 });

  const changed = await commit(engineer, await check(engineer, await upFindings(book('12/10 lbf'))));
  expect(changed.outcome).toMatchObject({ added: 0, changed: 1, skipped: 2 });
  expect((await findingsOf(second.id))[0]).toEqual(['force_below_minimum', 'no', 53.3787, 'N', 'import']);
  const [, audited] = await it.db.prisma.auditEntry.findMany({
    where: { entityId: second.id, action: 'findings taken' },
    orderBy: { id: 'asc' },
  });
  expect(audited).toMatchObject({
    label: second.number,
    before: { force_below_minimum: '22.2411' },
    after: { force_below_minimum: '53.3787' },
  });
});

test('a cell may hold several findings; what cannot be taken comes back with its reason', async () => {
  const gone = (await engineer.post('/api/v1/failures', reportBody(plantId))).body;
  const manager = await it.as('manager', [plantId]);
  await manager.put(`/api/v1/failures/${gone.id}/void`, { reason: 'recorded twice' }, gone.version);
  const file = [
    'Plant,Report,Findings',
    `LIS,${first.number},"residue = no; no_float = yes"`,
    `LIS,${first.number},residue = yes`,
    'LIS,LIS-26-99999,residue = yes',
    `LIS,${gone.number},residue = yes`,
    `LIS,${first.number},lock_open = yes`,
    `LIS,${first.number},`,
  ].join('\n');
  const job = await check(engineer, await map(engineer, await upFindings(file), {}));
  expect(job.outcome).toMatchObject({ rows: 6, added: 1, refused: 5 });
  expect(job.outcome!.firstRefused.map(({ line, reason }) => [line, reason]).sort()).toEqual([
    [3, 'repeated_finding'],
    [4, 'unknown_report'],
    [5, 'voided_report'],
    [6, 'not_a_finding'],
    [7, 'missing'],
  ]);
  await commit(engineer, job, true);
  expect((await findingsOf(first.id)).map(([code]: string[]) => code)).toContain('no_float');
});

test('findings of failures come in with a workbook of reports as well', async () => {
  const rows = [
    ['Plant', 'Found on', 'Stage', 'Source', 'Findings'],
    ['LIS', '2026-06-10', 'insertion', 'line', 'latch_whitened = yes'],
  ];
  const { body } = await upload(engineer, workbook({ List: sheetXml(cells(rows)) }), { source: 'book' });
  const job = await commit(
    engineer,
    await check(engineer, await map(engineer, body, {}, { fixed: { quantityFound: '1' } })),
  );
  expect(job.outcome).toMatchObject({ added: 1 });
  const report = await it.db.prisma.failure.findFirstOrThrow({ where: { importId: job.id } });
  expect(await findingsOf(report.id)).toEqual([['latch_whitened', 'yes', null, null, 'import']]);
});
