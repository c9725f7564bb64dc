import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type Asker, createTestApp, type TestApp } from '#tests/support/app.ts';
import { askCommit, check, commit, map, upload } from '#tests/support/imports.ts';
import {
  makeExchangeRate,
  makeHousing,
  makeLine,
  makePlant,
  makeStages,
  makeStandardCost,
  makeTerminal,
  makeTool,
} from '#tests/support/master-data.ts';

let service: TestApp;
let engineer: Asker;
let plantId: string;
beforeAll(async () => {
  service = await createTestApp();
  const plant = await makePlant(service.db, { code: 'ALFA', zone: 'America/New_York', currency: 'USD' });
  plantId = plant.id;
  await makeStages(service.db, plantId);
  await makeLine(service.db, plantId, { code: 'L1' });
  await makeTool(service.db, plantId, { code: 'AP-7' });
  await makeHousing(service.db, { code: 'H-12', safetyRelevant: true });
  await makeTerminal(service.db, { code: 'T-9' });
  await makeExchangeRate(service.db, 'EUR', 'USD', '1.1');
  for (const stage of [2, 4, 6, 8])
    for (const disposition of ['reworked', 'scrapped'] as const)
      await makeStandardCost(service.db, plantId, stage, disposition, stage * 100);
  engineer = await service.as('engineer', [plantId]);
});
afterAll(() => service.close());

const list = [
  'Failures of the week;;;;;;;;;;;;;',
  'Meldung;Werk;Linie;Gefunden am;Gebaut am;Stufe;Quelle;Gehäuse;Werkzeug;Menge gefunden;Menge geprüft;Ursache;Verursachende Stufe;Verbleib;Kosten;Bemerkung',
  'R-1;ALFA;L1;13.05.2026 23:30;12.05.2026;Endprüfung;Linie;H-12;AP-7;2;1.000;Werkzeug;Crimpen;Nacharbeit;12,50;"Kontakt\nlose"',
  'R-2;alfa;L1;14.05.2026;12.05.2026;ST4;Kunde;;;1;;nicht eingerastet;;;;',
  'R-3;ALFA;;02.06.2026;;Funktionsprüfung;Linie;H-12;;3;5;Werkzeug;Crimpen;Ausschuss;0;',
].join('\r\n');
const fixed = { costBasis: 'gebucht', costCategory: 'Ausschuss', costCurrency: 'EUR' };

describe('an import of failure reports', () => {
  test('goes from upload to reports, and a repeat adds nothing', async () => {
    const { status, body } = await upload(engineer, Buffer.from(list, 'latin1'));
    expect(status).toBe(201);
    expect(body.layout).toEqual({ format: 'csv', encoding: 'windows-1252', delimiter: ';' });
    expect(body.headerLine).toBe(2);
    expect(body.columns.map((it: { suggestion: string }) => it.suggestion)).toEqual([
      'externalRef',
      'plant',
      'line',
      'foundOn',
      'builtOn',
      'stage',
      'source',
      'housing',
      'tools',
      'quantityFound',
      'quantityInspected',
      'cause',
      'origin',
      'disposition',
      'costAmount',
      'note',
    ]);
    const mapped = await map(engineer, body, {}, { fixed });
    const checked = await check(engineer, mapped);
    expect(checked).toMatchObject({
      state: 'uploaded',
      questions: [
        { about: 'dateOrder', field: 'builtOn', choices: ['dmy', 'mdy'], example: '12.05.2026' },
        { about: 'decimalMark', field: 'quantityInspected', example: '1.000' },
      ],
    });
    const answered = await check(
      engineer,
      await map(
        engineer,
        checked,
        {},
        { fixed, dateOrder: { builtOn: 'dmy' }, decimalMark: { quantityInspected: 'comma' } },
      ),
    );
    expect(answered).toMatchObject({
      state: 'checked',
      questions: [],
      unknown: [],
      outcome: { rows: 3, added: 3, changed: 0, skipped: 0, refused: 0 },
    });
    expect(await service.db.prisma.failure.count()).toBe(0);

    const done = await commit(engineer, answered);
    expect(done).toMatchObject({ state: 'committed', outcome: { added: 3 } });
    const reports = await service.db.prisma.failure.findMany({ orderBy: { importLine: 'asc' } });
    expect(reports).toMatchObject([
      {
        number: 'ALFA-26-00001',
        externalRef: 'R-1',
        importLine: 3,
        quantityFound: 2,
        quantityInspected: 1000,
        found: 6,
        origin: 2,
        cause: 'tooling',
        disposition: 'reworked',
        safety: true,
        note: 'Kontakt\nlose',
        costItems: 1,
        bookedMinor: 1375n,
        estimatedMinor: 0n,
        importId: done.id,
      },
      {
        number: 'ALFA-26-00002',
        importLine: 5,
        found: 4,
        source: 'customer',
        cause: 'partial_seat',
        disposition: 'pending',
        lockState: 'unknown',
        safety: false,
        costItems: 0,
      },
      { number: 'ALFA-26-00003', importLine: 6, found: 8, disposition: 'scrapped', costItems: 0 },
    ]);
    // 23:30 in New York in May is 03:30 UTC of the next day.
    expect(reports[0]!.foundAt).toEqual(new Date('2026-05-14T03:30:00Z'));
    expect(reports[0]!.foundOn).toEqual(new Date('2026-05-13'));

    const again = await check(engineer, (await upload(engineer, Buffer.from(list, 'latin1'))).body);
    expect(again).toMatchObject({
      state: 'checked',
      outcome: { rows: 3, added: 0, changed: 0, skipped: 3, refused: 0 },
    });
    expect((await askCommit(engineer, again)).status).toBe(409);
  });

  test('gives new reports the figures that the one definition gives', async () => {
    const differing = await service.db.pool.query(
      `select f.number, f.standard_minor, g.standard_minor as s, f.gate, g.gate as g, f.gate_minor, g.gate_minor as m, f.gates_passed, g.gates_passed as p
       from failure f join failure_figures g using (id, plant_id)
       where (f.standard_minor, f.gate, f.gate_minor, f.gates_passed) is distinct from (g.standard_minor, g.gate, g.gate_minor, g.gates_passed)`,
    );
    expect(differing.rows).toEqual([]);
    expect(
      await service.db.prisma.failure.count({ where: { gate: { not: null }, standardMinor: { not: null } } }),
    ).toBeGreaterThan(0);
  });

  test('is audited, keeps each cause, and can be opened from a report', async () => {
    const audit = await service.db.prisma.auditEntry.findMany({ where: { entity: 'import' } });
    expect(audit).toMatchObject([
      { action: 'imported', label: 'list.csv', plantId, actor: 'Test engineer', after: { add: 3, kind: 'failures' } },
    ]);
    expect(await service.db.prisma.causeChange.count()).toBe(3);
    const [report] = await service.db.prisma.failure.findMany({ where: { externalRef: 'R-1' } });
    const { body } = await engineer.get(`/api/v1/failures/${report!.id}`);
    expect(body).toMatchObject({
      importLine: 3,
      costItems: [
        {
          category: 'scrap',
          basis: 'booked',
          amountMinor: 1250,
          currency: 'EUR',
          plantMinor: 1375,
          rateOn: '2020-01-01',
        },
      ],
    });
  });

  test('changes a report whose sender changed its row, and leaves what a person did since', async () => {
    const [before] = await service.db.prisma.failure.findMany({ where: { externalRef: 'R-2' } });
    await engineer.put(`/api/v1/failures/${before!.id}/cause`, { cause: 'handling', subCause: 'dropped' }, 1);
    const same = await check(engineer, (await upload(engineer, Buffer.from(list, 'latin1'))).body);
    expect(same.outcome).toMatchObject({ skipped: 3 });

    const changedList = list
      .replace(
        'R-2;alfa;L1;14.05.2026;12.05.2026;ST4;Kunde;;;1;;nicht eingerastet',
        'R-2;alfa;L1;14.05.2026;12.05.2026;ST4;Kunde;;;4;;',
      )
      .replace('12,50', '20,00');
    const checked = await check(engineer, (await upload(engineer, Buffer.from(changedList, 'latin1'))).body);
    expect(checked.outcome).toMatchObject({ added: 0, changed: 2, skipped: 1 });
    expect((await commit(engineer, checked)).state).toBe('committed');
    const [after] = await service.db.prisma.failure.findMany({ where: { externalRef: 'R-2' } });
    expect(after).toMatchObject({
      id: before!.id,
      number: before!.number,
      quantityFound: 4,
      cause: 'handling',
      subCause: 'dropped',
      version: 3,
    });
    expect(await service.db.prisma.failure.findMany({ where: { externalRef: 'R-1' } })).toMatchObject([
      { bookedMinor: 2200n, costItems: 1 },
    ]);
    const trail = await service.db.prisma.auditEntry.findMany({
      where: { entity: 'failure', action: 'imported', entityId: before!.id },
    });
    expect(trail).toMatchObject([{ before: { quantity_found: 1 }, after: { quantity_found: 4 } }]);
  });
});
