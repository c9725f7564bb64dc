import { createHash } from 'node:crypto';
import { unzipSync } from 'fflate';
import { extractText, getDocumentProxy } from 'unpdf';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { disciplines } from '#contracts/case-parts.ts';
import type { Case } from '#contracts/cases.ts';
import { type Asker, createTestApp, type TestApp } from '#tests/support/app.ts';
import { addVerifiedAction, fullContent, openCase, readCase, saveParts, sendAs, sign } from '#tests/support/cases.ts';
import { addReports } from '#tests/support/facts.ts';
import { makeCustomer, makePlant, makeTool } from '#tests/support/master-data.ts';

let app: TestApp;
let plantId: string;
let other: string;
let manager: Asker;
let second: Asker;

beforeAll(async () => {
  app = await createTestApp();
  plantId = (await makePlant(app.db)).id;
  other = (await makePlant(app.db)).id;
  await makeTool(app.db, other, { type: 'AP-150' });
  manager = await app.as('manager', [plantId]);
  second = await app.as('manager', [plantId]);
});
afterAll(() => app.close());

const report = async (more: object = {}) =>
  (await addReports(app.db, [{ plantId, foundOn: '2026-05-02', ...more }]))[0]!;
/** A case with all content and a verified action. */
async function filled(more: object = {}, reportMore: object = {}): Promise<Case> {
  const failureId = await report(reportMore);
  const opened = await openCase(manager, plantId, { reportIds: [failureId], ...more });
  await addVerifiedAction(app, plantId, opened.id, manager.id);
  return saveParts(manager, opened.id, fullContent(failureId));
}
const signAll = async (id: string, upTo = 7) => {
  for (const discipline of disciplines.filter((it) => it <= upTo))
    expect((await sign(manager, id, discipline)).status, `D${discipline}`).toBe(200);
};
const textOf = async (pdf: Buffer) =>
  (await extractText(await getDocumentProxy(new Uint8Array(pdf)), { mergePages: true })).text;
const textOfDocx = (docx: Buffer) =>
  Object.entries(unzipSync(new Uint8Array(docx)))
    .filter(([name]) => /\.(xml|rels|svg)$/.test(name))
    .map(([, bytes]) => new TextDecoder().decode(bytes).replace(/<[^>]+>/g, ' '))
    .join(' ');

describe('a case', () => {
  it('says what each discipline lacks, and is not signed before', async () => {
    const opened = await openCase(manager, plantId);
    expect(opened.number).toMatch(/-8D-26-\d{3}$/);
    expect(opened.disciplines[0]).toMatchObject({ missing: ['symptom', 'emergency'], toSignAs: ['quality'] });
    const refused = await sign(manager, opened.id, 0);
    expect(refused.body).toMatchObject({ status: 409, detail: expect.stringContaining('the symptom') });
    for (const discipline of disciplines) expect((await sign(manager, opened.id, discipline)).status).toBe(409);
  });

  it('goes from D0 to its closure, locks what is signed, and reopens with a reason', async () => {
    const { id } = await filled();
    await signAll(id);
    const locked = await manager.put(`/api/v1/cases/${id}/parts/plan`, { symptom: 'other' }, 1);
    expect(locked.body).toMatchObject({ status: 409, detail: expect.stringContaining('signed') });
    expect((await sign(manager, id, 8)).body.state).toBe('open');
    expect((await sign(manager, id, 8, 'plant_management')).body.state).toBe('closed');
    const lessons = (await manager.get('/api/v1/lessons?q=applicator')).body.items;
    expect(lessons).toHaveLength(1);
    const asked = (await readCase(manager, id)).readAcross;
    expect(asked).toMatchObject([{ answer: null }]);
    const reopened = await manager.put(`/api/v1/cases/${id}/disciplines/5/reopening`, { reason: 'another cause' }, 1);
    expect(reopened.body.state).toBe('open');
    expect(reopened.body.disciplines.map(({ locked }: { locked: boolean }) => locked)).toEqual([
      true,
      true,
      true,
      true,
      true,
      false,
      false,
      false,
      false,
    ]);
    expect((await manager.get('/api/v1/lessons?q=applicator')).body.items).toHaveLength(0);
    const history = (await manager.get(`/api/v1/cases/${id}/history?limit=5`)).body.items;
    expect(history[0]).toMatchObject({ action: 'reopened', after: { reason: 'another cause' } });
  });

  it('that is safety-relevant is closed by two people and product safety, never by its author alone', async () => {
    const { id } = await filled({}, { safety: true });
    await signAll(id);
    expect((await sign(manager, id, 8)).status).toBe(200);
    expect((await sign(manager, id, 8, 'plant_management')).body.detail).toContain('two people');
    expect((await sign(second, id, 8, 'plant_management')).body.state).toBe('open');
    expect((await sign(second, id, 8, 'product_safety')).body.detail).toContain('Nobody answers for product safety');
    await app.db.prisma.productSafetyDuty.create({ data: { plantId, personId: second.id } });
    expect((await sign(manager, id, 8, 'product_safety')).status).toBe(409);
    expect((await sign(second, id, 8, 'product_safety')).body.state).toBe('closed');
    const own = await filled({ safety: true });
    expect((await manager.put(`/api/v1/cases/${own.id}/dropped`, { reason: 'a mistake' }, own.version)).status).toBe(
      409,
    );
    expect((await second.put(`/api/v1/cases/${own.id}/dropped`, { reason: 'a mistake' }, own.version)).body.state).toBe(
      'dropped',
    );
  });

  it('loses nothing when two people edit it', async () => {
    const { id } = await openCase(manager, plantId);
    const save = (asker: Asker, symptom: string) => asker.put(`/api/v1/cases/${id}/parts/plan`, { symptom }, 0);
    const answers = await Promise.all([save(manager, 'mine'), save(second, 'yours')]);
    expect(answers.map(({ status }) => status).sort()).toEqual([200, 412]);
    expect((await second.put(`/api/v1/cases/${id}/parts/team`, fullContent('').team, 0)).status).toBe(200);
  });

  it('is not signed under words that changed meanwhile', async () => {
    const seen = await filled();
    await saveParts(second, seen.id, { plan: { symptom: 'quite another', emergency: 'none' } });
    expect((await sendAs(manager, seen.id, 0, 'quality', seen)).status).toBe(412);
  });

  it('rests only on evidence of its own', async () => {
    const it = await filled();
    const foreign = await report();
    const nodes = [{ id: 'top1', parent: null, text: 'why', proof: [{ kind: 'report', failureId: foreign }] }];
    expect((await manager.put(`/api/v1/cases/${it.id}/parts/system`, { nodes }, 1)).body).toMatchObject({
      status: 422,
      errors: [{ path: 'body/nodes/0/proof/0' }],
    });
    const circle = [
      { id: 'aaaa', parent: 'bbbb', text: 'a' },
      { id: 'bbbb', parent: 'aaaa', text: 'b' },
    ];
    expect((await manager.put(`/api/v1/cases/${it.id}/parts/system`, { nodes: circle }, 1)).status).toBe(400);
    const unlinked = await manager.put(`/api/v1/cases/${it.id}`, { title: 'without its report' }, it.version);
    expect(unlinked.body).toMatchObject({ status: 409, detail: expect.stringContaining('rests on it') });
  });
});

describe('a plant that is asked', () => {
  it('sees neutral words, answers, and gets an action; the case stays hidden', async () => {
    const customer = await makeCustomer(app.db, { name: 'Zephyrine Rail', code: 'ZRX' });
    const it = await filled({ customerId: customer.id });
    await saveParts(manager, it.id, {
      lesson: { ...fullContent('').lesson, problem: 'Zephyrine Rail sent back 40; ZRX charged 900 EUR' },
    });
    await signAll(it.id);
    await sign(manager, it.id, 8);
    await sign(manager, it.id, 8, 'plant_management');
    const engineer = await app.as('engineer', [other]);
    const asked = (await engineer.get('/api/v1/read-across?open=true')).body.items[0];
    expect(asked).toMatchObject({
      why: ['tool_type'],
      problem: 'another customer sent back 40; another customer charged [amount]',
    });
    expect(JSON.stringify(asked)).not.toContain(it.id);
    expect((await engineer.get(`/api/v1/cases/${it.id}`)).status).toBe(404);
    const answer = { answer: 'applies', text: 'Check all six applicators', ownerId: engineer.id, due: '2026-07-01' };
    const url = `/api/v1/read-across/${asked.id}/answer`;
    expect((await manager.put(url, answer, asked.version)).status).toBe(404);
    const answered = (await engineer.put(url, answer, asked.version)).body;
    expect(answered).toMatchObject({ answer: 'applies', actionId: expect.any(String) });
    expect((await engineer.get(`/api/v1/actions/${answered.actionId}`)).body).toMatchObject({
      kind: 'read_across',
      caseId: null,
    });
    expect((await readCase(manager, it.id)).readAcross).toMatchObject([{ answer: 'applies' }]);
    const offered = (await engineer.get('/api/v1/lessons/offered?cause=tooling&text=applicator+lances')).body.items;
    expect(offered[0]).toMatchObject({ caseId: null, like: ['cause', 'words'] });
  });
});

describe('the customer’s document', () => {
  it('never holds names of other customers nor money, whatever the team wrote', async () => {
    const own = await makeCustomer(app.db, { name: 'Ownhouse Vehicles', code: 'OWN', paper: 'Letter', locale: 'de' });
    const secret = 'Mallardine Group (MLD), 4.711,00 EUR and $12k';
    await makeCustomer(app.db, { name: 'Mallardine Group', code: 'MLD' });
    const it = await filled({ customerId: own.id, title: `Back-outs, as at ${secret}` });
    const spoil = (value: unknown, key = ''): unknown => {
      if (Array.isArray(value)) return value.map((one) => spoil(one));
      if (value && typeof value === 'object')
        return Object.fromEntries(Object.entries(value).map(([name, one]) => [name, spoil(one, name)]));
      const kept = [
        'id',
        'parent',
        'kind',
        'failureId',
        'nodeId',
        'role',
        'aspect',
        'against',
        'cause',
        'subCause',
        'origin',
        'stage',
        'on',
        'changedOn',
        'cleanPoint',
        'effectiveFrom',
      ];
      return typeof value === 'string' && !kept.includes(key) ? `${value} ${secret}` : value;
    };
    const {
      plan,
      team,
      problem,
      timeline,
      containment,
      occurrence,
      non_detection,
      system,
      root_cause,
      corrections,
      validation,
      prevention,
      closure,
    } = fullContent(it.reports[0]!.id);
    const spoilt = {
      plan,
      team,
      problem,
      timeline,
      containment,
      occurrence,
      non_detection,
      system,
      root_cause,
      corrections,
      validation,
      prevention,
      closure,
    };
    await saveParts(manager, it.id, spoil(spoilt) as typeof spoilt);
    await app.db.prisma.action.updateMany({
      where: { caseId: it.id },
      data: { title: `Replace ${secret}`, costMinor: 471_100n, costCurrency: 'EUR' },
    });
    const pdf = await manager.get(`/api/v1/cases/${it.id}/document`);
    const docx = await manager.get(`/api/v1/cases/${it.id}/document?format=docx`);
    expect(pdf.raw.subarray(0, 5).toString()).toBe('%PDF-');
    for (const text of [await textOf(pdf.raw), textOfDocx(docx.raw)]) {
      expect(text).toContain('8D-Bericht');
      expect(text).toContain('Ownhouse Vehicles');
      expect(text).not.toMatch(/Mallardine|MLD|4\.?711|\$\s?12|EUR/);
    }
    const check = (await manager.get(`/api/v1/cases/${it.id}/document/check`)).body;
    expect(check).toMatchObject({ locale: 'de', paper: 'Letter', unreadable: [] });
    expect(check.masked.length).toBeGreaterThan(2);
  });

  it('is kept as it went out, byte for byte', async () => {
    const it = await filled();
    const kept = (
      await manager.post(`/api/v1/cases/${it.id}/documents`, { format: 'pdf', recipient: 'q@customer.invalid' })
    ).body;
    await saveParts(manager, it.id, { closure: { summary: 'changed afterwards' } });
    const file = (await manager.get(`/api/v1/case-documents/${kept.id}`)).raw;
    expect(createHash('sha256').update(file).digest('hex')).toBe(kept.sha256);
    expect((await readCase(manager, it.id)).documents).toMatchObject([
      { revision: 1, recipient: 'q@customer.invalid' },
    ]);
  });
});
