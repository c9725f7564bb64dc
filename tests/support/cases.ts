/** An invented case through the API, filled as far as a test wants it. */
import { newId } from '#api/platform/ids.ts';
import { type Discipline, type PartName, partNames } from '#contracts/case-parts.ts';
import type { Case } from '#contracts/cases.ts';
import type { Answer, Asker, TestApp } from './app.ts';

const test = { kind: 'test' as const, text: 'switched on and off three times' };
const tree = (name: string, failureId: string) => ({
  nodes: [
    { id: `${name}-top`, parent: null, text: `${name}: the terminal backed out`, proof: [], ruledOut: false },
    {
      id: `${name}-end`,
      parent: `${name}-top`,
      text: `${name}: the end`,
      proof: [{ kind: 'report', failureId }],
      ruledOut: false,
    },
    { id: `${name}-out`, parent: `${name}-top`, text: `${name}: not this`, proof: [test], ruledOut: true },
  ],
});

/** Content that lets every discipline be signed once the actions are there. */
export const fullContent = (failureId: string): Record<Exclude<PartName, 'document'>, object> => ({
  plan: { symptom: 'Terminal found loose in cavity A1', emergency: 'Shipments stopped', why: 'Repeat' },
  team: {
    members: [
      { id: 'mem1', name: 'Ada Quill', role: 'leader' },
      { id: 'mem2', name: 'Bo Reed', role: 'process', company: 'Toolwright' },
    ],
  },
  problem: {
    statement: 'Terminals back out of housing at the product test',
    rows: ['what', 'where', 'when', 'extent'].map((aspect) => ({
      id: `row-${aspect}`,
      aspect,
      is: `is ${aspect}`,
      isNot: `is not ${aspect}`,
      difference: '',
      change: '',
    })),
  },
  timeline: {
    events: [
      { id: 'ev01', on: '2026-05-02', text: 'First report' },
      { id: 'ev02', on: '2026-05-20', text: 'Applicator replaced' },
    ],
  },
  containment: {
    summary: 'All stock sorted',
    verification: 'No further find in 500',
    cleanPoint: '2026-05-21',
    cleanMark: 'green dot',
    notNeeded: 'No stock is left',
  },
  occurrence: tree('occurrence', failureId),
  non_detection: tree('non_detection', failureId),
  system: tree('system', failureId),
  root_cause: {
    occurrence: {
      nodeId: 'occurrence-end',
      statement: 'Worn applicator flattens the lance',
      cause: 'tooling',
      subCause: 'worn_applicator',
      origin: 'termination',
    },
    escape: { nodeId: 'non_detection-end', statement: 'No pull check', stage: 'lock_check' },
    system: { nodeId: 'system-end', statement: 'Service by calendar, not by cycles' },
    verification: 'New applicator: 0 of 500; old one put back: 7 of 500',
  },
  corrections: {
    options: [
      { id: 'opt1', against: 'occurrence', text: 'Replace the applicator', chosen: true, reason: 'Acts at the origin' },
      { id: 'opt2', against: 'non_detection', text: 'Push-click-pull check', chosen: true, reason: 'Sees it at once' },
      { id: 'opt3', against: 'occurrence', text: 'Glue the terminals', chosen: false, reason: 'Never bond terminals' },
    ],
  },
  validation: {
    summary: 'Applicator replaced on line L3',
    effectiveFrom: '2026-05-22',
    withoutVerdict: 'The customer wants the report before the data are in',
  },
  prevention: {
    systems: 'Service by cycle count',
    documents: [{ id: 'doc1', kind: 'control_plan', name: 'CP-17', revision: '4', changedOn: '2026-06-01' }],
    noDocuments: null,
  },
  reach: { toolTypes: ['AP-150'], housingIds: [], terminalIds: [], practice: '', notNeeded: null },
  lesson: {
    title: 'Worn applicator flattens lances',
    problem: 'Back-outs after the product test',
    rootCause: 'Applicator ran past its cycles',
    check: 'Look at lances of every applicator above its interval',
    notNeeded: null,
  },
  closure: { summary: 'No further back-out since', thanks: 'Thanks to all' },
});

export const openCase = async (asker: Asker, plantId: string, more: object = {}): Promise<Case> => {
  const answer = await asker.post('/api/v1/cases', {
    plantId,
    title: 'Terminals back out at the product test',
    ...more,
  });
  if (answer.status !== 201) throw new Error(JSON.stringify(answer.body));
  return answer.body;
};

export const readCase = async (asker: Asker, id: string): Promise<Case> =>
  (await asker.get(`/api/v1/cases/${id}`)).body;

export async function saveParts(asker: Asker, id: string, parts: Partial<Record<PartName, object>>): Promise<Case> {
  let now = await readCase(asker, id);
  for (const name of partNames) {
    const content = parts[name];
    if (!content) continue;
    const answer = await asker.put(`/api/v1/cases/${id}/parts/${name}`, content, now.parts[name].version);
    if (answer.status !== 200) throw new Error(`${name}: ${JSON.stringify(answer.body)}`);
    now = answer.body;
  }
  return now;
}

/** A corrective action that somebody else verified, straight in the database. */
export async function addVerifiedAction(app: TestApp, plantId: string, caseId: string, ownerId: string): Promise<void> {
  const { now } = app.time;
  const verifier = await app.as('engineer', [plantId]);
  await app.db.prisma.action.create({
    data: {
      ...{
        id: newId(),
        plantId,
        number: newId(),
        kind: 'corrective',
        title: 'Replace the applicator',
        ownerId,
        caseId,
      },
      ...{ openedAt: now, openedOn: now, openedBy: 'Test', dueOn: now, state: 'verified', stateAt: now },
      ...{ carriedOutOn: now, carriedOutBy: ownerId, verifiedBy: verifier.id, verifiedOn: now, verification: 'seen' },
    },
  });
}

/** Signs under the version that was read. */
export const sendAs = (asker: Asker, id: string, discipline: Discipline, role: string, seen: Case): Promise<Answer> => {
  const { version } = seen.disciplines[discipline]!;
  if (role === 'product_safety') return asker.put(`/api/v1/cases/${id}/product-safety-signature`, {}, version);
  return asker.put(`/api/v1/cases/${id}/disciplines/${discipline}/signature`, { role }, version);
};

export const sign = async (asker: Asker, id: string, discipline: Discipline, role = 'quality') =>
  sendAs(asker, id, discipline, role, await readCase(asker, id));
