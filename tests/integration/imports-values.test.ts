/** Unknown values, refused rows, production, plants that are not one's own, bad input. */
import { setTimeout as sleep } from 'node:timers/promises';
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { newId } from '#api/platform/ids.ts';
import { hashSecret, newSecret } from '#api/platform/passwords.ts';
import { type Asker, createTestApp, type TestApp } from '#tests/support/app.ts';
import { askCommit, check, commit, form, map, settled, upload } from '#tests/support/imports.ts';
import { makeLine, makePlant } from '#tests/support/master-data.ts';
import { sheetXml, text, workbook } from '#tests/support/workbook.ts';

let service: TestApp;
let engineer: Asker;
let manager: Asker;
let alfa: string;
let bravo: string;
beforeAll(async () => {
  service = await createTestApp();
  alfa = (await makePlant(service.db, { code: 'ALFA' })).id;
  bravo = (await makePlant(service.db, { code: 'BRAVO' })).id;
  await makeLine(service.db, alfa, { code: 'L1' });
  engineer = await service.as('engineer', [alfa]);
  manager = await service.as('manager', [alfa]);
});
afterAll(() => service.close());
beforeEach(() =>
  service.db.pool.query(
    'truncate failure, cause_change, cost_item, report_counter, production, import_value, import_mapping cascade',
  ),
);

const head = 'Reference,Plant,Line,Date found,Stage,Source,Qty,Inspected,Root cause,Build date\n';
const good = 'A-1,ALFA,L1,2026-05-13,EOL,line,2,10,tooling,2026-05-12\n';
const counts = async () => [
  await service.db.prisma.failure.count(),
  await service.db.prisma.causeChange.count(),
  await service.db.prisma.auditEntry.count({ where: { entity: 'import' } }),
];

describe('unknown values', () => {
  const list = `${head}${good}A-2,ALFA,Line Nine,2026-05-13,EOL,line,1,,ghosts,\nA-3,ALFA,Line Nine,2026-05-13,EOL,line,1,,ghosts,\n`;

  test('are listed with their counts and mapped or created in one step, kept for the source', async () => {
    const checked = await check(manager, (await upload(manager, list)).body);
    expect(checked.unknown).toEqual([
      { field: 'cause', plantId: null, raw: 'ghosts', rows: 2 },
      { field: 'line', plantId: alfa, raw: 'Line Nine', rows: 2 },
    ]);
    expect(checked.outcome).toMatchObject({ added: 1, refused: 2, reasons: [{ reason: 'unknown_value', rows: 2 }] });
    const defined = await manager.put(
      `/api/v1/imports/${checked.id}/values`,
      {
        values: [
          { field: 'cause', raw: 'ghosts', as: 'existing', target: 'undetermined' },
          { field: 'line', plantId: alfa, raw: 'Line Nine', as: 'new', input: { code: 'L9', name: 'Line Nine' } },
        ],
      },
      checked.version,
    );
    expect(defined).toMatchObject({ status: 200, body: { unknown: [], state: 'uploaded' } });
    expect(await check(manager, defined.body)).toMatchObject({ outcome: { added: 3, refused: 0 } });
    expect(await service.db.prisma.line.findMany({ where: { code: 'L9' } })).toMatchObject([
      { plantId: alfa, name: 'Line Nine' },
    ]);
    expect((await check(manager, (await upload(manager, list)).body)).outcome).toMatchObject({ added: 3 });
  });

  test.each([
    [{ field: 'cause', raw: 'ghosts', as: 'existing', target: 'ghost' }, 422],
    [{ field: 'cause', raw: 'ghosts', as: 'new', input: {} }, 422],
    [{ field: 'source', raw: 'x', as: 'blank' }, 422],
    [{ field: 'note', raw: 'x', as: 'blank' }, 422],
    [{ field: 'line', raw: 'x', as: 'new', input: { code: 'X1', name: 'X' } }, 404],
  ])('are not given a meaning that makes none: %j', async (value, status) => {
    const checked = await check(manager, (await upload(manager, list)).body);
    const answer = await manager.put(`/api/v1/imports/${checked.id}/values`, { values: [value] }, checked.version);
    expect(answer.status).toBe(status);
    expect(await service.db.prisma.importValue.count()).toBe(0);
  });

  test('are not given a meaning at a plant that is not the sender’s', async () => {
    const checked = await check(manager, (await upload(manager, list)).body);
    const answer = await manager.put(
      `/api/v1/imports/${checked.id}/values`,
      { values: [{ field: 'line', plantId: bravo, raw: 'x', as: 'new', input: { code: 'X1', name: 'X' } }] },
      checked.version,
    );
    expect(answer.status).toBe(404);
  });
});

describe('refused rows', () => {
  const bad = [
    ['A-9,ALFA,L1,2026-05-13,EOL,line,2,1,tooling,', 'found_above_inspected'],
    ['A-9,ALFA,L1,20260-05-13,EOL,line,2,,tooling,', 'year_out_of_range'],
    ['A-9,ALFA,L1,2026-05-13,EOL,line,1e30,,tooling,', 'too_large'],
    ['A-9,ALFA,L1,2026-05-13,EOL,line,,,tooling,', 'missing'],
    ['A-9,ALFA,L1,2026-05-13,EOL,line,0,,tooling,', 'too_small'],
    ['A-9,ALFA,L1,2026-05-13,EOL,line,1.5,,tooling,', 'not_whole'],
    ['A-9,ALFA,L1,2026-07-13,EOL,line,1,,tooling,', 'in_future'],
    ['A-9,ALFA,L1,2026-05-13,EOL,line,1,,tooling,2026-05-14', 'built_after_found'],
    ['A\u0000-9,ALFA,L1,2026-05-13,EOL,line,1,,tooling,', 'bad_character'],
    ['"A-9"x,ALFA,L1,2026-05-13,EOL,line,1,,tooling,', 'broken_quote'],
    [`${'A'.repeat(81)},ALFA,L1,2026-05-13,EOL,line,1,,tooling,`, 'too_long'],
    ['A-1,ALFA,L1,2026-05-13,EOL,line,3,,tooling,', 'repeated_reference'],
    ['A-9,BRAVO,L1,2026-05-13,EOL,line,1,,tooling,', 'unknown_value'],
  ];
  test.each(bad)('%j: %s', async (row, reason) => {
    const checked = await check(engineer, (await upload(engineer, `${head}${good}${row}\n`)).body);
    expect(checked.outcome).toMatchObject({
      rows: 2,
      added: 1,
      refused: 1,
      reasons: [{ reason, rows: 1 }],
      firstRefused: [{ line: 3, reason }],
    });
  });

  test('keep everything out, unless the person leaves them out', async () => {
    const before = await counts();
    const checked = await check(engineer, (await upload(engineer, `${head}${good}${bad[0]![0]}\n`)).body);
    expect((await askCommit(engineer, checked)).body).toMatchObject({ status: 409, code: 'conflict' });
    expect(await counts()).toEqual(before);
    expect((await commit(engineer, checked, true)).state).toBe('committed');
    expect(await service.db.prisma.failure.findMany({ select: { externalRef: true } })).toEqual([
      { externalRef: 'A-1' },
    ]);
  });

  test('come back as a file in which no formula is live', async () => {
    const checked = await check(
      engineer,
      (await upload(engineer, `${head}${good}A-2,=cmd|'/c calc'!A1,L1,2026-05-13,EOL,line,two,,tooling,\n`)).body,
    );
    const { raw, headers } = await engineer.get(`/api/v1/imports/${checked.id}/refused`);
    expect(headers['content-type']).toContain('text/csv');
    expect(raw.toString()).toBe(
      `\ufeffLine,Column,Value,Reason\r\n3,Plant,'=cmd|'/c calc'!A1,"is not known, or belongs to a plant that is not yours"\r\n`,
    );
  });
});

describe('rows without a reference', () => {
  const list =
    'Plant,Date found,Stage,Source,Qty,Note\nALFA,2026-05-13,EOL,line,1,same\nALFA,2026-05-13,EOL,line,1,same\nALFA,2026-05-13,EOL,line,2,other\n';
  test('are known by themselves: equal rows are several failures, and a repeat adds none', async () => {
    await commit(engineer, await check(engineer, (await upload(engineer, list)).body));
    expect(await service.db.prisma.failure.count()).toBe(3);
    const more = await check(engineer, (await upload(engineer, `${list}ALFA,2026-05-13,EOL,line,1,same\n`)).body);
    expect(more.outcome).toMatchObject({ rows: 4, added: 1, skipped: 3 });
  });
});

describe('production', () => {
  const list =
    'Werk;Tag;Linie;Stückzahl;Kontakte\nALFA;13.05.2026;L1;10;100\nALFA;13.05.2026;L1;5;50\nALFA;14.05.2026;L1;7;70\n';
  test('asks about rows of the same day and line, adds them up, and repeats to nothing', async () => {
    const asked = await check(engineer, (await upload(engineer, list, { kind: 'production' })).body);
    expect(asked).toMatchObject({ state: 'uploaded', questions: [{ about: 'sameKey', rows: 2 }] });
    const checked = await check(engineer, await map(engineer, asked, {}, { sameKey: 'add_up' }));
    expect(checked.outcome).toMatchObject({ rows: 3, added: 3, refused: 0 });
    await commit(engineer, checked);
    expect(
      await service.db.prisma.production.findMany({
        orderBy: { day: 'asc' },
        select: { units: true, terminals: true },
      }),
    ).toEqual([
      { units: 15n, terminals: 150n },
      { units: 7n, terminals: 70n },
    ]);
    const again = await check(
      engineer,
      (await upload(engineer, list.replace(';7;70', ';8;80'), { kind: 'production' })).body,
    );
    expect(again.outcome).toMatchObject({ added: 0, changed: 1, skipped: 2 });
    await commit(engineer, again);
    expect(await service.db.prisma.production.count({ where: { units: 8n, version: 2 } })).toBe(1);
  });
  test('refuses rows of the same key together where they are not to be added up', async () => {
    const asked = await check(engineer, (await upload(engineer, list, { kind: 'production' })).body);
    const checked = await check(engineer, await map(engineer, asked, {}, { sameKey: 'refuse' }));
    expect(checked.outcome).toMatchObject({
      rows: 3,
      added: 1,
      refused: 2,
      reasons: [{ reason: 'repeated_key', rows: 2 }],
    });
  });
});

describe('an import', () => {
  test('is seen by its maker and by those who read all plants, by nobody else', async () => {
    const { body } = await upload(engineer, head + good);
    const other = await service.as('engineer', [bravo]);
    const all = await service.as('engineer');
    const viewer = await service.as('viewer');
    expect((await other.get(`/api/v1/imports/${body.id}`)).status).toBe(404);
    expect((await all.get(`/api/v1/imports/${body.id}`)).status).toBe(200);
    expect((await viewer.get(`/api/v1/imports/${body.id}`)).status).toBe(403);
    expect((await other.get('/api/v1/imports')).body.items).toEqual([]);
    expect((await engineer.get('/api/v1/imports?limit=1')).body).toMatchObject({
      items: [{ id: body.id, createdBy: 'Test engineer' }],
    });
  });

  test('is made once under one Idempotency-Key', async () => {
    const headers = { 'idempotency-key': 'a-key-of-mine' };
    const first = await upload(engineer, head + good, { headers });
    const second = await upload(engineer, head + good, { headers });
    expect(second.body.id).toBe(first.body.id);
  });

  test('is made by a machine with a token just as by a person', async () => {
    const secret = newSecret();
    const token = await service.db.prisma.apiToken.create({
      data: { id: newId(), name: 'Line tester', secretHash: hashSecret(secret), createdBy: manager.id },
    });
    await service.db.prisma.roleGrant.create({
      data: { id: newId(), tokenId: token.id, role: 'engineer', plantId: alfa },
    });
    const headers = { authorization: `Bearer ${secret}`, cookie: '' };
    const machine: Asker = {
      ...engineer,
      get: (url) => engineer.get(url, { headers }),
      post: (url, body, extra) => engineer.post(url, body, { ...extra, headers: { ...extra?.headers, ...headers } }),
    };
    const done = await commit(machine, await check(machine, (await upload(machine, head + good)).body));
    expect(done).toMatchObject({ state: 'committed', createdBy: 'Line tester', outcome: { added: 1 } });
    expect(await service.db.prisma.auditEntry.count({ where: { entity: 'import', actor: 'Line tester' } })).toBe(1);
  });

  test('loses a race with 412, and says what is missing before it begins', async () => {
    const { body } = await upload(engineer, head + good);
    expect((await engineer.put(`/api/v1/imports/${body.id}/mapping`, body.mapping, body.version + 1)).status).toBe(412);
    const { body: incomplete } = await engineer.put(
      `/api/v1/imports/${body.id}/mapping`,
      { columns: body.columns.map(() => null) },
      body.version,
    );
    const answer = await engineer.post(
      `/api/v1/imports/${body.id}/check`,
      {},
      { headers: { 'content-type': 'application/json', 'if-match': `"${incomplete.version}"` } },
    );
    expect(answer.body).toMatchObject({ status: 422, detail: expect.stringContaining('Plant, Found on') });
  });

  test('can be stopped, and given up', async () => {
    const rows = Array.from({ length: 40_000 }, (_, at) => good.replace('A-1', `B-${at}`)).join('');
    const { body } = await upload(engineer, head + rows);
    await engineer.post(
      `/api/v1/imports/${body.id}/check`,
      {},
      { headers: { 'content-type': 'application/json', 'if-match': `"${body.version}"` } },
    );
    await sleep(100);
    const stopped = await engineer.post(`/api/v1/imports/${body.id}/cancel`, {});
    expect(stopped.body).toMatchObject({ state: 'uploaded', trouble: { code: 'stopped' } });
    expect((await engineer.post(`/api/v1/imports/${body.id}/cancel`, {})).body.state).toBe('cancelled');
    expect((await engineer.post(`/api/v1/imports/${body.id}/cancel`, {})).status).toBe(409);
  });

  test('that a stopped service left behind says so and can be checked again', async () => {
    const { body } = await upload(engineer, head + good);
    await service.db.prisma.importJob.update({ where: { id: body.id }, data: { state: 'committing' } });
    const { markInterrupted } = await import('#api/features/imports/imports.repository.ts');
    await markInterrupted(service.db);
    const interrupted = await settled(engineer, body.id);
    expect(interrupted).toMatchObject({ state: 'interrupted', trouble: { code: 'interrupted' } });
    expect((await check(engineer, interrupted)).state).toBe('checked');
  });
});

describe('bad uploads', () => {
  test('a file above 2 GiB is refused before it is read', async () => {
    const sent = form('a,b\n1,2\n');
    const answer = await engineer.post('/api/v1/imports?kind=failures&source=x', '', {
      payload: sent.payload,
      headers: { ...sent.headers, 'content-length': String(3 * 1024 ** 3) },
    });
    expect(answer.body).toMatchObject({ status: 413, code: 'too_large' });
  });
  test('a zip bomb is refused while it unpacks', async () => {
    function* zeros() {
      const piece = Buffer.alloc(1024 * 1024, 32);
      yield Buffer.from('<worksheet><sheetData><row r="1"><c r="A1" t="inlineStr"><is><t>a</t></is></c></row>');
      for (let at = 0; at < 40; at += 1) yield piece;
      yield Buffer.from('</sheetData></worksheet>');
    }
    const answer = await upload(engineer, workbook({ Bomb: zeros() }));
    expect(answer.body).toMatchObject({
      status: 422,
      code: 'unreadable_file',
      detail: expect.stringContaining('unpacks to far more'),
    });
  });
  test('entities of a workbook’s own are refused', async () => {
    const evil = sheetXml(`<row r="1">${text('A1', '&a;')}</row>`).replace(
      '<worksheet',
      '<!DOCTYPE x [<!ENTITY a "aaaa">]><worksheet',
    );
    expect((await upload(engineer, workbook({ List: evil }))).body).toMatchObject({
      status: 422,
      code: 'unreadable_file',
    });
  });
  test.each([
    ['no form', { payload: 'a,b', headers: { 'content-type': 'text/plain' } }, 415],
    ['another field', form('a,b\n1,2', 'x.csv', 'other'), 400],
  ])('%s', async (_name, extra, status) => {
    expect((await engineer.post('/api/v1/imports?kind=failures&source=x', '', extra)).status).toBe(status);
  });
  test('a kind or layout that does not exist', async () => {
    expect((await upload(engineer, head + good, { kind: 'everything' })).status).toBe(400);
    const { body } = await upload(engineer, head + good);
    for (const layout of [
      { format: 'csv', encoding: 'utf-8', delimiter: '"' },
      { format: 'xlsx', sheets: [], sheet: 'x' },
      { format: 'pdf' },
    ])
      expect(
        (await engineer.put(`/api/v1/imports/${body.id}/layout`, { layout }, body.version)).status,
      ).toBeGreaterThanOrEqual(400);
    const changed = await engineer.put(
      `/api/v1/imports/${body.id}/layout`,
      { layout: { format: 'csv', encoding: 'windows-1252', delimiter: ';' } },
      body.version,
    );
    expect(changed.body.columns).toHaveLength(1);
  });
});
