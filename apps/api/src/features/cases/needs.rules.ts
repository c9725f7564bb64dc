/** What a discipline lacks before it can be signed: pure, from what the case holds at that moment. */
import {
  type CaseContent,
  type Discipline,
  disciplines,
  isIsNotAspects,
  type Need,
  type SignRole,
  type WhyTree,
} from '#contracts/case-parts.ts';

export interface LinkedAction {
  kind: 'containment' | 'corrective' | 'preventive' | 'read_across';
  state: string;
  verdict: 'held' | 'not_shown_yet' | 'did_not_hold' | null;
}

export interface CaseFacts {
  content: CaseContent;
  safety: boolean;
  /** roles whose signature holds, by discipline */
  signed: ReadonlyMap<Discipline, readonly SignRole[]>;
  actions: readonly LinkedAction[];
  containments: readonly { closed: boolean }[];
  complaints: number;
  documentsKept: number;
}

type Demand = readonly [Need, boolean];
const said = (text: string | null): boolean => text !== null && text.trim() !== '';

/** The ends of a tree: nodes that no other explains. */
export const endsOf = ({ nodes }: WhyTree) => {
  const parents = new Set(nodes.map(({ parent }) => parent));
  return nodes.filter(({ id }) => !parents.has(id));
};
const grown = (tree: WhyTree): boolean => tree.nodes.length >= 2;
const chosenEnd = (tree: WhyTree, nodeId: string | null): boolean =>
  endsOf(tree).some(({ id, ruledOut }) => id === nodeId && !ruledOut);

/** Roles that have to sign. The closure is signed in several names; one of a safety-relevant case also by product safety. */
export const rolesFor = (discipline: Discipline, safety: boolean): SignRole[] =>
  discipline < 8 ? ['quality'] : ['quality', 'plant_management', ...(safety ? (['product_safety'] as const) : [])];

export const fullySigned = ({ signed, safety }: Pick<CaseFacts, 'signed' | 'safety'>, discipline: Discipline) =>
  rolesFor(discipline, safety).every((role) => signed.get(discipline)?.includes(role));

/** D3 is urgent and waits for D0 only; every other discipline waits for all before it. */
const earlier = (discipline: Discipline) =>
  disciplines.filter((it) => it < discipline && (discipline !== 3 || it === 0));

const open = ({ state }: LinkedAction) => state !== 'verified' && state !== 'given_up';

const demands: Record<Discipline, (facts: CaseFacts) => Demand[]> = {
  0: ({ content: { plan } }) => [
    ['symptom', said(plan.symptom)],
    ['emergency', said(plan.emergency)],
  ],
  1: ({ content: { team } }) => [
    ['leader', team.members.some(({ role }) => role === 'leader')],
    ['two_members', team.members.length >= 2],
  ],
  2: ({ content: { problem, timeline } }) => [
    ['statement', said(problem.statement)],
    [
      'is_is_not',
      isIsNotAspects.every((aspect) =>
        problem.rows.some((row) => row.aspect === aspect && said(row.is) && said(row.isNot)),
      ),
    ],
    ['timeline', timeline.events.length > 0],
  ],
  3: ({ content: { containment }, containments, actions }) => {
    const unneeded = said(containment.notNeeded);
    const linked = containments.length > 0 || actions.some(({ kind }) => kind === 'containment');
    return [
      ['containment', unneeded || (said(containment.summary) && linked)],
      ['containment_verified', unneeded || said(containment.verification)],
    ];
  },
  4: ({ content }) => {
    const { occurrence, non_detection: nonDetection, system, root_cause: root } = content;
    const trees = [occurrence, nonDetection, system];
    return [
      ['occurrence_tree', grown(occurrence)],
      ['non_detection_tree', grown(nonDetection)],
      ['system_tree', grown(system)],
      ['ends_proved', trees.every((tree) => endsOf(tree).every(({ proof }) => proof.length > 0))],
      [
        'root_cause',
        chosenEnd(occurrence, root.occurrence.nodeId) &&
          said(root.occurrence.statement) &&
          root.occurrence.cause !== null &&
          root.occurrence.cause !== 'undetermined' &&
          root.occurrence.origin !== null,
      ],
      [
        'escape_point',
        chosenEnd(nonDetection, root.escape.nodeId) && said(root.escape.statement) && root.escape.stage !== null,
      ],
      ['system_cause', chosenEnd(system, root.system.nodeId) && said(root.system.statement)],
      ['root_cause_proved', said(root.verification)],
    ];
  },
  5: ({ content: { corrections } }) => {
    const chosen = (against: string) => corrections.options.some((it) => it.chosen && it.against === against);
    return [
      ['correction_against_occurrence', chosen('occurrence')],
      ['correction_against_escape', chosen('non_detection')],
      ['corrections_decided', corrections.options.every(({ chosen, reason }) => chosen !== null && said(reason))],
    ];
  },
  6: ({ content: { validation }, actions }) => {
    const corrective = actions.filter(({ kind }) => kind === 'corrective');
    const verdicts = corrective.flatMap(({ verdict, state }) => (verdict && state !== 'given_up' ? [verdict] : []));
    return [
      ['corrective_action', corrective.some(({ state }) => state !== 'given_up')],
      ['actions_verified', corrective.some(({ state }) => state === 'verified') && !corrective.some(open)],
      [
        'verdict',
        !verdicts.includes('did_not_hold') &&
          ((verdicts.length > 0 && verdicts.every((it) => it === 'held')) || said(validation.withoutVerdict)),
      ],
      ['effective_from', said(validation.summary) && validation.effectiveFrom !== null],
    ];
  },
  7: ({ content: { prevention, reach, lesson } }) => [
    ['prevention', said(prevention.systems)],
    ['documents', prevention.documents.length > 0 || said(prevention.noDocuments)],
    [
      'reach',
      reach.toolTypes.length + reach.housingIds.length + reach.terminalIds.length > 0 ||
        said(reach.practice) ||
        said(reach.notNeeded),
    ],
    ['lesson', said(lesson.notNeeded) || [lesson.title, lesson.problem, lesson.rootCause, lesson.check].every(said)],
  ],
  8: ({ content: { closure }, containments, actions, complaints, documentsKept }) => [
    ['closing_words', said(closure.summary)],
    ['containment_closed', containments.every(({ closed }) => closed)],
    ['actions_closed', !actions.some(open)],
    ['customer_told', complaints === 0 || documentsKept > 0],
  ],
};

/** In the order in which a person would mend them; empty when the discipline can be signed. */
export function missingIn(facts: CaseFacts, discipline: Discipline): Need[] {
  const waiting: Demand = ['earlier_signed', earlier(discipline).every((it) => fullySigned(facts, it))];
  return [...demands[discipline](facts), waiting].filter(([, met]) => !met).map(([need]) => need);
}
