import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { terms } from '#contracts/terms.en.ts';
import { type Asker, createTestApp, type TestApp } from '#tests/support/app.ts';
import { check, commit, map, upload } from '#tests/support/imports.ts';
import * as make from '#tests/support/master-data.ts';
import { reportBody } from '#tests/support/reports.ts';

let it: TestApp;
let plant: Awaited<ReturnType<typeof make.makePlant>>;
let other: typeof plant;
let engineer: Asker;
let second: Asker;
let inspector: Asker;

beforeAll(async () => {
  it = await createTestApp({ now: '2026-06-15T10:00:00Z' });
  plant = await make.makePlant(it.db, { code: 'LIS' });
  other = await make.makePlant(it.db, { code: 'OSA', zone: 'Asia/Tokyo', currency: 'JPY' });
  await make.makeStages(it.db, plant.id);
  await make.makeStages(it.db, other.id);
  engineer = await it.as('engineer', [plant.id]);
  second = await it.as('engineer', [plant.id]);
  inspector = await it.as('inspector', [plant.id, other.id]);
});
afterAll(() => it.close());

const record = async (fields = {}) =>
  (await inspector.post('/api/v1/failures', reportBody(plant.id, fields))).body as {
    id: string;
    version: number;
    number: string;
  };
const evidence = (id: string, by = engineer) => by.get(`/api/v1/failures/${id}/evidence`);
const take = (id: string, findings: object[], extra = {}) =>
  inspector.put(`/api/v1/failures/${id}/evidence`, { findings, ...extra }, 1);
const confirm = (id: string, version: number, decision: object, by = engineer) =>
  by.put(`/api/v1/failures/${id}/confirmation`, decision, version);
const learned = () => it.db.prisma.learnedAnswer.findMany({ orderBy: [{ code: 'asc' }, { cause: 'asc' }] });

describe('findings', () => {
  test('move the suggestion, and the report says which and how much', async () => {
    const { id } = await record();
    const before = (await evidence(id)).body.suggestion;
    expect(before.model).toMatchObject({ basis: 'prior', casesGroup: 0, muted: false });
    const { status, body } = await take(id, [
      { code: 'probe_mark', answer: 'yes' },
      { code: 'contact_opened', answer: 'yes' },
      { code: 'residue', answer: 'could_not_tell' },
    ]);
    expect(status).toBe(200);
    expect(body.suggestion.causes[0].cause).toBe('probe_damage');
    expect(body.suggestion.causes[0].probability).toBeGreaterThan(
      before.causes.find((one: { cause: string }) => one.cause === 'probe_damage').probability,
    );
    expect(body.suggestion.weights.map((weight: { finding: string }) => weight.finding)).toContain('probe_mark');
    expect(body.suggestion.weights.map((weight: { finding: string }) => weight.finding)).not.toContain('residue');
    expect(body.suggestion.nextChecks.map((check: { finding: string }) => check.finding)).not.toContain('probe_mark');
    expect(body.suggestion.takenFindings).toBe(3);
    const total = body.suggestion.causes.reduce(
      (sum: number, one: { probability: number }) => sum + one.probability,
      0,
    );
    expect(total).toBeCloseTo(1, 9);
  });

  test('a measured value decides its answer; pounds-force become newtons', async () => {
    const { id } = await record();
    const { body } = await take(id, [{ code: 'force_below_minimum', value: 5, limit: 10, unit: 'lbf' }]);
    expect(body.findings.find((one: { code: string }) => one.code === 'force_below_minimum')).toMatchObject({
      answer: 'yes',
      value: 22.2411,
      limit: 44.4822,
      unit: 'N',
    });
    const wrong = await take(id, [{ code: 'force_below_minimum', answer: 'no', value: 5, limit: 10 }]);
    expect(wrong.status).toBe(422);
    expect((await take(id, [{ code: 'lock_open', answer: 'yes' }])).body.detail).toContain('answered by the data');
    expect((await take(id, [{ code: 'tie_near', value: 12, limit: 25, unit: 'N' }])).status).toBe(422);
  });

  test('the data answers what it can: tool, lot elsewhere, lock, outer row, stage', async () => {
    const tool = await make.makeTool(it.db, plant.id);
    const housing = await make.makeHousing(it.db, { rows: 3, columns: 4 });
    await inspector.post('/api/v1/failures', reportBody(other.id, { reelLot: 'REEL-9/7', foundOn: '2026-06-01' }));
    await record({ toolIds: [tool.id], foundOn: '2026-06-01' });
    const { id } = await record({
      toolIds: [tool.id],
      foundOn: '2026-06-10',
      reelLot: 'REEL-9/7',
      housingId: housing.id,
      cavities: ['A2', 'C4'],
      lockState: 'forced',
      found: 'field',
    });
    const computed = (await evidence(id)).body.findings.filter((one: { source: string }) => one.source === 'computed');
    const answers = Object.fromEntries(computed.map((one: { code: string; answer: string }) => [one.code, one.answer]));
    expect(answers).toEqual({
      lock_open: 'yes',
      same_tool_lately: 'yes',
      same_lot_elsewhere: 'yes',
      outer_row: 'yes',
      after_test: 'yes',
    });
    const inner = await record({ housingId: housing.id, cavities: ['B2'], found: 'insertion' });
    const more = (await evidence(inner.id)).body.findings;
    expect(Object.fromEntries(more.map((one: { code: string; answer: string }) => [one.code, one.answer]))).toEqual({
      outer_row: 'no',
      after_test: 'no',
    });
  });

  test('that the housing cannot show are not proposed', async () => {
    const housing = await make.makeHousing(it.db, { retentionStyle: 'housing_latch', secondaryLock: 'none' });
    const { id } = await record({ housingId: housing.id });
    const { moot, suggestion } = (await evidence(id)).body;
    expect(moot).toEqual(['lance_flat', 'lance_intact', 'lance_low', 'lock_would_not_close']);
    const proposed = suggestion.nextChecks.map((check: { finding: string }) => check.finding);
    expect(proposed).toContain('latch_whitened');
    expect(proposed.filter((code: string) => moot.includes(code))).toEqual([]);
  });

  test('are changed and removed, each with an audit row; a foreign report is not found', async () => {
    const { id } = await record();
    await take(id, [{ code: 'residue', answer: 'yes' }]);
    const { body } = await take(id, [{ code: 'no_float', answer: 'no' }], { remove: ['residue'] });
    expect(
      body.findings
        .filter((one: { source: string }) => one.source === 'person')
        .map((one: { code: string }) => one.code),
    ).toEqual(['no_float']);
    const rows = await it.db.prisma.auditEntry.findMany({
      where: { entityId: id, action: 'findings taken' },
      orderBy: { id: 'asc' },
    });
    expect(rows.map(({ after }) => after)).toEqual([{ residue: 'yes' }, { no_float: 'no' }]);
    const stranger = await it.as('engineer', [other.id]);
    expect((await evidence(id, stranger)).status).toBe(404);
  });
});

test('findings come in with a file of reports; a repeat adds nothing, a changed row changes its findings', async () => {
  const file = (findings: string) =>
    [
      'Report number;Plant;Found on;Stage;Source;Quantity found;Findings',
      `F-1;LIS;2026-06-10;insertion;line;1;"${findings}"`,
      'F-2;LIS;2026-06-10;insertion;line;1;"lock_open = yes"',
    ].join('\r\n');
  const bring = async (findings: string) => {
    const { body } = await upload(engineer, file(findings));
    const job = await check(engineer, await map(engineer, body, { 'Report number': 'externalRef' }));
    return job.outcome?.skipped ? job.outcome : (await commit(engineer, job, true)).outcome;
  };
  const taken = async () => {
    const { id } = await it.db.prisma.failure.findFirstOrThrow({ where: { plantId: plant.id, externalRef: 'F-1' } });
    const { findings } = (await evidence(id)).body;
    return findings
      .filter(({ source }: { source: string }) => source === 'import')
      .map(({ code, answer, value }: { code: string; answer: string; value: number }) => [code, answer, value]);
  };
  const first = await bring('probe_mark = yes; Wire leaves at a sharp angle = 70/45 deg');
  expect(first).toMatchObject({ added: 1, refused: 1, reasons: [{ reason: 'not_a_finding', rows: 1 }] });
  expect(await taken()).toEqual([
    ['probe_mark', 'yes', null],
    ['sharp_exit', 'yes', 70],
  ]);
  expect(await bring('probe_mark = yes; Wire leaves at a sharp angle = 70/45 deg')).toMatchObject({ skipped: 1 });
  expect(await bring('probe_mark = no')).toMatchObject({ changed: 1 });
  expect(await taken()).toContainEqual(['probe_mark', 'no', null]);
});

test('an import that changes the cause of a confirmed report withdraws its confirmation, as sorting by hand does', async () => {
  const file = (cause: string, note: string) =>
    [
      'Report number;Plant;Found on;Stage;Source;Quantity found;Findings;Cause;Note',
      `W-1;LIS;2026-06-10;insertion;line;1;side_load = yes;${cause};${note}`,
    ].join('\r\n');
  const bring = async (cause: string, note = '') => {
    const { body } = await upload(engineer, file(cause, note));
    return commit(engineer, await check(engineer, await map(engineer, body, { 'Report number': 'externalRef' })));
  };
  const start = (await learned()).filter(({ yes, no }) => yes + no !== 0);
  await bring('');
  const { id, version } = await it.db.prisma.failure.findFirstOrThrow({
    where: { plantId: plant.id, externalRef: 'W-1' },
  });
  expect((await confirm(id, version, { cause: 'wire_dress' })).status).toBe(200);
  const live = () => it.db.prisma.confirmation.count({ where: { failureId: id, supersededAt: null } });
  await bring('wire dress', 'tie moved');
  expect(await live()).toBe(1);

  await bring('tooling', 'tie moved');
  expect(await live()).toBe(0);
  expect((await evidence(id)).body.decision).toBeNull();
  expect((await learned()).filter(({ yes, no }) => yes + no !== 0)).toEqual(start);
  const [row] = await it.db.prisma.auditEntry.findMany({ where: { entityId: id, action: 'confirmation withdrawn' } });
  expect(row).toMatchObject({ plantId: plant.id, before: { cause: 'wire_dress' } });
});

test('a tool is overdue from the cycle on at which the list of tools calls it due', async () => {
  const overdue = async (cycleCount: number) => {
    const tool = await make.makeTool(it.db, plant.id, { cycleCount, servicedAtCount: 1000, serviceInterval: 500 });
    const { id } = await record({ toolIds: [tool.id] });
    const { findings } = (await evidence(id)).body;
    return findings.find((one: { code: string }) => one.code === 'tool_overdue')?.answer;
  };
  expect(await overdue(1499)).toBe('no');
  expect(await overdue(1500)).toBe('yes');
});

describe('confirmation', () => {
  test('keeps what was said, learns once, and unlearns when the decision changes', async () => {
    const start = await learned();
    const { id, version } = await record();
    await take(id, [
      { code: 'residue', answer: 'yes' },
      { code: 'no_float', answer: 'yes' },
    ]);
    const said = (await evidence(id)).body.suggestion;
    expect(said.causes[0].cause).toBe('adhesive');
    const first = await confirm(id, version, { cause: 'adhesive', subCause: 'glue_in_rework' });
    expect(first.status).toBe(200);
    expect(first.body.suggestion.model).toMatchObject({ basis: 'thin', casesPlant: 1 });
    const [kept] = await it.db.prisma.confirmation.findMany({ where: { failureId: id } });
    expect(kept).toMatchObject({
      cause: 'adhesive',
      suggested: 'adhesive',
      modelVersion: said.model.version,
      taken: 2,
    });
    expect(Math.max(...kept!.probabilities)).toBeCloseTo(said.causes[0].probability, 9);
    expect((await learned()).find(({ code, cause }) => code === 'residue' && cause === 'adhesive')).toMatchObject({
      yes: 1,
      no: 0,
    });
    expect((await engineer.get(`/api/v1/failures/${id}`)).body).toMatchObject({
      cause: 'adhesive',
      subCause: 'glue_in_rework',
    });

    const now = first.body.version;
    expect((await confirm(id, now, { cause: 'tooling' })).body.detail).toContain('Say why');
    expect((await confirm(id, version, { cause: 'tooling', reason: 'worn die found' })).status).toBe(412);
    expect((await confirm(id, now, { cause: 'tooling', reason: 'worn die found' })).status).toBe(200);
    expect((await learned()).find(({ code, cause }) => code === 'residue' && cause === 'adhesive')).toMatchObject({
      yes: 0,
      no: 0,
    });
    expect((await learned()).find(({ code, cause }) => code === 'residue' && cause === 'tooling')).toMatchObject({
      yes: 1,
    });

    const { version: latest } = (await engineer.get(`/api/v1/failures/${id}`)).body;
    await engineer.put(`/api/v1/failures/${id}/cause`, { cause: 'undetermined' }, latest);
    const left = (await learned()).filter(({ yes, no }) => yes !== 0 || no !== 0);
    expect(left).toEqual(start.filter(({ yes, no }) => yes !== 0 || no !== 0));
    expect((await engineer.get(`/api/v1/failures/${id}`)).body.causeChanges).toHaveLength(3);
  });

  test('is judged without the case itself, also when it is decided a second time', async () => {
    const { id, version } = await record();
    await take(id, [{ code: 'side_load', answer: 'yes' }]);
    const first = await confirm(id, version, { cause: 'wire_dress' });
    const [before] = await it.db.prisma.confirmation.findMany({ where: { failureId: id } });
    expect(first.body.decision).toMatchObject({ cause: 'wire_dress', suggested: 'wire_dress', reason: null });
    expect(first.body.decision.findings).toContainEqual({ code: 'side_load', answer: 'yes' });
    await confirm(id, first.body.version, { cause: 'wire_dress' });
    const after = await it.db.prisma.confirmation.findFirst({ where: { failureId: id, supersededAt: null } });
    after!.probabilities.forEach((probability, place) => {
      expect(probability).toBeCloseTo(before!.probabilities[place]!, 12);
    });
  });

  test('of a voided report is unlearned, and a refused one teaches nothing', async () => {
    const start = (await learned()).filter(({ yes, no }) => yes + no !== 0);
    const manager = await it.as('manager', [plant.id]);
    const { id, version } = await record();
    await take(id, [{ code: 'flash_in_cavity', answer: 'yes' }]);
    const { body } = await confirm(id, version, { cause: 'component' });
    await manager.put(`/api/v1/failures/${id}/void`, { reason: 'recorded twice' }, body.version);
    expect((await learned()).filter(({ yes, no }) => yes + no !== 0)).toEqual(start);

    const open = await record();
    const said = async () => (await evidence(open.id)).body.suggestion.causes;
    const before = await said();
    expect((await confirm(open.id, open.version + 1, { cause: 'tooling' })).status).toBe(412);
    expect(await said()).toEqual(before);
  });

  test('takes the role; an inspector only takes findings', async () => {
    const { id, version } = await record();
    expect((await confirm(id, version, { cause: 'tooling' }, inspector)).status).toBe(403);
  });

  test('of a batch is all or nothing, for reports that share tool, lot and findings', async () => {
    const tool = await make.makeTool(it.db, plant.id);
    const alike = [
      await record({ toolIds: [tool.id] }),
      await record({ toolIds: [tool.id] }),
      await record({ toolIds: [tool.id] }),
    ];
    for (const { id } of alike) await take(id, [{ code: 'crimp_height_out', answer: 'yes' }]);
    const odd = await record({ toolIds: [tool.id] });
    const ids = alike.map(({ id }) => id);
    const found = (await engineer.get(`/api/v1/failures/${ids[0]}/alike`)).body.items.map(
      (one: { id: string }) => one.id,
    );
    expect(found.sort()).toEqual(ids.slice(1).sort());
    const refused = await engineer.post('/api/v1/evidence/batch', {
      ids: [...ids, odd.id],
      decision: { cause: 'tooling' },
    });
    expect(refused.status).toBe(422);
    expect(refused.body.detail).toContain(odd.number);
    expect(await it.db.prisma.confirmation.count({ where: { failureId: { in: ids } } })).toBe(0);
    const done = await engineer.post('/api/v1/evidence/batch', {
      ids,
      decision: { cause: 'tooling', subCause: 'crimp_height' },
    });
    expect(done.body).toEqual({ confirmed: 3 });
    const kept = await it.db.prisma.confirmation.findMany({ where: { failureId: { in: ids } } });
    expect(new Set(kept.map(({ modelVersion }) => modelVersion)).size).toBe(1);

    const bare = [await record(), await record()].map(({ id }) => id);
    const nothingShared = await engineer.post('/api/v1/evidence/batch', { ids: bare, decision: { cause: 'tooling' } });
    expect(nothingShared.body.detail).toContain('neither tool nor lot');
  });

  test('of one report by two people at once counts once', async () => {
    const { id, version } = await record();
    await take(id, [{ code: 'wrong_circuit', answer: 'yes' }]);
    const answers = await Promise.all([
      confirm(id, version, { cause: 'misinsertion' }),
      confirm(id, version, { cause: 'misinsertion' }, second),
    ]);
    expect(answers.map(({ status }) => status).sort()).toEqual([200, 412]);
    expect(
      (await learned()).find(({ code, cause }) => code === 'wrong_circuit' && cause === 'misinsertion'),
    ).toMatchObject({ yes: 1 });
  });
});

/** The report and all that leads to it tell the second person nothing of its cause; others see it. */
async function expectHidden(id: string) {
  for (const path of [`/api/v1/failures/${id}`, `/api/v1/failures/${id}/evidence`, `/api/v1/failures/${id}/alike`])
    expect((await second.get(path)).body).toMatchObject({ status: 409, code: 'opinion_first' });
  expect((await confirm(id, 1, { cause: 'tooling' }, second)).body.code).toBe('opinion_first');
  const row = async (by: Asker) =>
    (await by.get('/api/v1/failures?limit=200&from=2026-01-01')).body.items.find(
      (one: { id: string }) => one.id === id,
    );
  expect(await row(second)).toMatchObject({ cause: null, subCause: null, origin: null });
  const { number, cause } = await row(engineer);
  expect(cause).not.toBeNull();
  const line = async (by: Asker) =>
    ((await by.get('/api/v1/failures/export?format=csv&from=2026-01-01')).body as unknown as string)
      .split('\r\n')
      .find((one) => one.includes(number))!;
  const label = terms.cause[cause as keyof typeof terms.cause];
  expect(await line(engineer)).toContain(label);
  expect(await line(second)).not.toContain(label);
}

describe('second opinions', () => {
  test('are blind, not one’s own, given once, and measured by kappa', async () => {
    const asked = await engineer.post('/api/v1/evidence/opinions', {
      plant: [plant.id],
      from: '2026-01-01',
      to: '2027-01-01',
      sample: 200,
    });
    expect(asked.body.asked).toBeGreaterThanOrEqual(4);
    expect((await engineer.get('/api/v1/evidence/opinions')).body.items.length).toBeLessThan(asked.body.asked);
    const { items } = (await second.get('/api/v1/evidence/opinions')).body;
    const task = items[0];
    expect(task).toMatchObject({ failureId: null, number: null });
    expect((await second.get(`/api/v1/evidence/opinions/${task.id}`)).status).toBe(409);
    expect((await second.put(`/api/v1/evidence/opinions/${task.id}`, { cause: 'tooling' }, 1)).body.detail).toContain(
      'Take this opinion',
    );
    for (const { id } of items)
      expect((await second.put(`/api/v1/evidence/opinions/${id}/taken`, {}, 1)).status).toBe(204);
    const blind = await second.get(`/api/v1/evidence/opinions/${task.id}`);
    expect(JSON.stringify(blind.body)).not.toMatch(/"cause"|proof|suggest/);
    expect((await engineer.put(`/api/v1/evidence/opinions/${task.id}`, { cause: 'tooling' }, 1)).status).toBe(409);
    const taken = (await second.get('/api/v1/evidence/opinions')).body.items as { id: string; failureId: string }[];
    await expectHidden(taken[0]!.failureId);
    for (const { id, failureId } of taken) {
      const { cause } = (await engineer.get(`/api/v1/failures/${failureId}`)).body;
      expect((await second.put(`/api/v1/evidence/opinions/${id}`, { cause }, 1)).status).toBe(204);
    }
    expect((await second.put(`/api/v1/evidence/opinions/${task.id}`, { cause: 'tooling' }, 1)).status).toBe(409);
    expect((await second.get(`/api/v1/failures/${taken[0]!.failureId}`)).body.cause).not.toBeNull();
    const { agreement } = (await engineer.get('/api/v1/evidence/record')).body;
    expect(agreement.pairs).toBe(items.length);
    expect(agreement.observed.value).toBe(1);
    const { blind: blindly } = (await engineer.get('/api/v1/evidence/record')).body;
    const confirmations = await it.db.prisma.confirmation.findMany();
    const given = await it.db.prisma.opinion.findMany({ where: { givenAt: { not: null } } });
    const same = given.filter(
      ({ cause, confirmationId }) => confirmations.find(({ id }) => id === confirmationId)!.suggested === cause,
    );
    expect(blindly.value).toBeCloseTo(same.length / given.length, 12);
  });
});

describe('the record', () => {
  test('judges each case by what was said before it was learned from, and says so when there are too few', async () => {
    const { body } = await engineer.get('/api/v1/evidence/record');
    const live = await it.db.prisma.confirmation.findMany({
      where: { supersededAt: null, taken: { gt: 0 }, cause: { not: 'undetermined' } },
    });
    const right = live.filter(({ cause, suggested }) => cause === suggested).length;
    expect(body).toMatchObject({ cases: live.length, better: 'too_few' });
    expect(body.accuracy.value).toBeCloseTo(right / live.length, 12);
    expect(body.confusion.reduce((sum: number, cell: { cases: number }) => sum + cell.cases, 0)).toBe(live.length);
    const foreign = await it.as('viewer', [other.id]);
    expect((await foreign.get('/api/v1/evidence/record')).body).toMatchObject({
      cases: 0,
      accuracy: { value: null, reason: 'no_reports' },
    });
  });

  test('mutes a suggestion that does not beat the most frequent cause', async () => {
    const { id } = await record();
    const [sample] = await it.db.prisma.confirmation.findMany({ take: 1, where: { supersededAt: null } });
    const { id: _id, failureId: _failure, ...rest } = sample!;
    await it.db.prisma.confirmation.createMany({
      data: Array.from({ length: 60 }, () => ({
        ...rest,
        answers: {},
        taken: 1,
        id: crypto.randomUUID(),
        failureId: crypto.randomUUID(),
        cause: 'handling' as const,
        suggested: 'tooling' as const,
        frequent: 'handling' as const,
      })),
    });
    expect((await evidence(id)).body.suggestion.model.muted).toBe(true);
    expect((await engineer.get('/api/v1/evidence/record')).body.better).toBe('not_better');
  });
});

test('tallies of decided causes equal the reports, through sorting, correcting and voiding', async () => {
  const manager = await it.as('manager', [plant.id]);
  const housing = await make.makeHousing(it.db);
  const one = await record({ housingId: housing.id });
  await engineer.put(`/api/v1/failures/${one.id}/cause`, { cause: 'component' }, one.version);
  const gone = await record({ housingId: housing.id });
  await engineer.put(`/api/v1/failures/${gone.id}/cause`, { cause: 'component' }, gone.version);
  const { version } = (await engineer.get(`/api/v1/failures/${gone.id}`)).body;
  await manager.put(`/api/v1/failures/${gone.id}/void`, { reason: 'recorded twice' }, version);
  const tally = await it.db.prisma.causeTally.findMany({ where: { reports: { not: 0 } } });
  const counted = await it.db.prisma.failure.groupBy({
    by: ['plantId', 'housingId', 'cause'],
    where: { voidedAt: null, cause: { not: null } },
    _count: true,
  });
  const key = (plantId: string, housingId: string | null, cause: string | null, count: number) =>
    `${plantId} ${housingId ?? '00000000-0000-0000-0000-000000000000'} ${cause} ${count}`;
  expect(tally.map((row) => key(row.plantId, row.housingId, row.cause, row.reports)).sort()).toEqual(
    counted.map((row) => key(row.plantId, row.housingId, row.cause, row._count)).sort(),
  );
  const totals = await it.db.prisma.causeTotal.findMany({ where: { reports: { not: 0 } } });
  const byPlant = await it.db.prisma.failure.groupBy({
    by: ['plantId', 'cause'],
    where: { voidedAt: null, cause: { not: null } },
    _count: true,
  });
  expect(totals.map((row) => key(row.plantId, null, row.cause, row.reports)).sort()).toEqual(
    byPlant.map((row) => key(row.plantId, null, row.cause, row._count)).sort(),
  );
});
