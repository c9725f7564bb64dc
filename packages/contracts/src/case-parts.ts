/** What an 8D team writes, discipline by discipline. Each part is saved on its own, with a version of its own. */
import { z } from 'zod';
import { SubCause } from './failures.ts';
import { FindingCode } from './finding-catalogue.ts';
import { Day, Id, Locale, Mark, Paper } from './shared/scalars.ts';
import { Cause, causeTaxonomy, Stage } from './taxonomy.ts';

export const disciplines = [0, 1, 2, 3, 4, 5, 6, 7, 8] as const;
export const Discipline = z.union(disciplines.map((it) => z.literal(it)));
export type Discipline = z.infer<typeof Discipline>;

const Text = z.string().trim().max(10_000).default('');
const Line = z.string().trim().max(300).default('');
const optional = <Item extends z.ZodType>(item: Item) => item.nullable().default(null);
const Why = optional(z.string().trim().min(3).max(2000));
/** Made by whoever adds the row, so that two people's rows can be told apart and merged. */
const RowId = z.string().regex(/^[\w-]{4,40}$/);
const rows = <Item extends z.ZodType>(item: Item, most = 60) =>
  z
    .array(item)
    .max(most)
    .default([])
    .refine((all) => new Set(all.map((it) => (it as { id: string }).id)).size === all.length, 'must not repeat an id');

export const Plan = z.object({
  symptom: Text.describe('what was noticed, by whom'),
  emergency: Text.describe('what was done at once to protect people and the customer'),
  why: Text.describe('why an 8D is the right way to work on it'),
});

export const teamRoles = [
  'leader',
  'sponsor',
  'quality',
  'process',
  'production',
  'design',
  'product_safety',
  'supplier',
  'customer',
  'member',
] as const;
export const TeamRole = z.enum(teamRoles);
export const TeamMember = z.object({
  id: RowId,
  name: z.string().trim().min(1).max(120),
  role: TeamRole.default('member'),
  company: optional(Mark).describe('where the member is not of the plant'),
});
export const Team = z.object({ members: rows(TeamMember) });

export const isIsNotAspects = ['what', 'where', 'when', 'extent'] as const;
export const IsIsNotRow = z.object({
  id: RowId,
  aspect: z.enum(isIsNotAspects),
  is: Text,
  isNot: Text,
  difference: Text.describe('what is particular about what it is, against what it is not'),
  change: Text.describe('what changed about that, and when'),
});
export const Problem = z.object({ statement: Text, rows: rows(IsIsNotRow) });
export const Timeline = z.object({
  events: rows(z.object({ id: RowId, on: Day, text: z.string().trim().min(1).max(500) })),
});

export const InterimContainment = z.object({
  summary: Text.describe('where the suspect parts are and what keeps them from going on'),
  verification: Text.describe('how it is known that the containment works'),
  cleanPoint: optional(Day).describe('first build day known to be good'),
  cleanMark: Line.describe('how good parts are marked'),
  notNeeded: Why.describe('why no containment is needed, where none is'),
});

export const treeNames = ['occurrence', 'non_detection', 'system'] as const;
export const TreeName = z.enum(treeNames);
export type TreeName = z.infer<typeof TreeName>;
/** What an end of a tree rests on. */
export const ProofLink = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('report'), failureId: Id }),
  z.object({ kind: z.literal('finding'), failureId: Id, code: FindingCode }),
  z.object({ kind: z.literal('photo'), photoId: Id }),
  z.object({ kind: z.literal('attachment'), attachmentId: Id }),
  z.object({
    kind: z.literal('test'),
    text: z.string().trim().min(3).max(1000).describe('what was tried and came out'),
  }),
]);
export type ProofLink = z.infer<typeof ProofLink>;
export const WhyNode = z.object({
  id: RowId,
  parent: RowId.nullable().describe('the node that this one explains; null at the top'),
  text: z.string().trim().min(1).max(500),
  proof: z.array(ProofLink).max(10).default([]),
  ruledOut: z.boolean().default(false).describe('looked into and found not to be so; the proof says why'),
});
export type WhyNode = z.infer<typeof WhyNode>;
export const WhyTree = z.object({ nodes: rows(WhyNode) }).superRefine(({ nodes }, context) => {
  const parents = new Map(nodes.map(({ id, parent }) => [id, parent]));
  const refuse = (place: number, message: string) =>
    context.addIssue({ code: 'custom', path: ['nodes', place, 'parent'], message });
  nodes.forEach(({ id, parent }, place) => {
    if (parent !== null && !parents.has(parent)) refuse(place, 'names no node of this tree');
    const seen = new Set([id]);
    for (let up = parent; up; up = parents.get(up) ?? null) {
      if (seen.has(up)) {
        refuse(place, 'runs in a circle');
        break;
      }
      seen.add(up);
    }
  });
  if (nodes.filter(({ parent }) => parent === null).length > 1)
    refuse(
      nodes.findLastIndex(({ parent }) => parent === null),
      'a tree has one top',
    );
});
export type WhyTree = z.infer<typeof WhyTree>;

const Chosen = { nodeId: optional(RowId).describe('an end of the tree'), statement: Text };
export const RootCause = z
  .object({
    occurrence: z
      .object({ ...Chosen, cause: optional(Cause), subCause: optional(SubCause), origin: optional(Stage) })
      .prefault({}),
    escape: z
      .object({ ...Chosen, stage: optional(Stage).describe('first gate that could have seen it and let it pass') })
      .prefault({}),
    system: z.object(Chosen).prefault({}),
    verification: Text.describe('how the root cause was proved: the fault switched on and off, a calculation, a test'),
  })
  .refine(
    ({ occurrence: { cause, subCause } }) =>
      subCause === null || (cause !== null && causeTaxonomy[cause].subCauses.includes(subCause)),
    { path: ['occurrence', 'subCause'], message: 'must be a sub-cause of the cause' },
  );

export const Correction = z.object({
  id: RowId,
  against: TreeName,
  text: z.string().trim().min(1).max(1000),
  chosen: optional(z.boolean()).describe('null while undecided'),
  reason: Text.describe('why it was chosen or rejected'),
});
export const Corrections = z.object({ options: rows(Correction) });

export const Validation = z.object({
  summary: Text.describe('what was put into effect, and how it was shown to work'),
  effectiveFrom: optional(Day).describe('first build day with the correction'),
  withoutVerdict: Why.describe('why the discipline is signed before the data have shown that the action held'),
});

export const documentKinds = [
  'fmea',
  'control_plan',
  'work_instruction',
  'drawing',
  'maintenance_plan',
  'training',
  'specification',
  'other',
] as const;
export const Prevention = z.object({
  systems: Text.describe('what changes in systems and procedures so that the like does not come back'),
  documents: rows(
    z.object({
      id: RowId,
      kind: z.enum(documentKinds),
      name: z.string().trim().min(1).max(200),
      revision: Line,
      changedOn: optional(Day),
    }),
  ),
  noDocuments: Why.describe('why no document changes, where none does'),
});
export const Reach = z.object({
  toolTypes: z.array(Mark).max(30).default([]),
  housingIds: z.array(Id).max(30).default([]),
  terminalIds: z.array(Id).max(30).default([]),
  practice: Line.describe('a practice that every plant may have; then all plants are asked'),
  notNeeded: Why.describe('why no other plant need be asked'),
});
/** Neutral words: other plants read them. Names of customers and amounts of money are taken out. */
export const LessonText = z.object({
  title: Line,
  problem: Text,
  rootCause: Text,
  check: Text.describe('what another plant should look at'),
  notNeeded: Why.describe('why there is nothing to learn from it elsewhere'),
});

export const Closure = z.object({
  summary: Text.describe('what was reached, and what stays to be watched'),
  thanks: Text.describe('what the team is thanked for'),
});

/** What goes out to the customer. Nothing is in it that was not chosen here. */
export const DocumentChoice = z.object({
  locale: optional(Locale).describe('null: the language of the customer'),
  paper: optional(Paper).describe('null: the paper of the customer'),
  disciplines: z
    .array(Discipline)
    .max(9)
    .default([...disciplines]),
  photoIds: z.array(Id).max(40).default([]).describe('photos of the linked reports'),
  attachmentIds: z.array(Id).max(40).default([]).describe('pictures go into the document, other files are named in it'),
  team: z.boolean().default(true).describe('with the names of the team and of who signed'),
});
export type DocumentChoice = z.infer<typeof DocumentChoice>;

/** Every part, the discipline it belongs to (null: to none), and its content. */
export const caseParts = {
  plan: { discipline: 0, content: Plan },
  team: { discipline: 1, content: Team },
  problem: { discipline: 2, content: Problem },
  timeline: { discipline: 2, content: Timeline },
  containment: { discipline: 3, content: InterimContainment },
  occurrence: { discipline: 4, content: WhyTree },
  non_detection: { discipline: 4, content: WhyTree },
  system: { discipline: 4, content: WhyTree },
  root_cause: { discipline: 4, content: RootCause },
  corrections: { discipline: 5, content: Corrections },
  validation: { discipline: 6, content: Validation },
  prevention: { discipline: 7, content: Prevention },
  reach: { discipline: 7, content: Reach },
  lesson: { discipline: 7, content: LessonText },
  closure: { discipline: 8, content: Closure },
  document: { discipline: null, content: DocumentChoice },
} as const satisfies Record<string, { discipline: Discipline | null; content: z.ZodType }>;

export type PartName = keyof typeof caseParts;
export const partNames = Object.keys(caseParts) as PartName[];
export type PartContent<Name extends PartName = PartName> = z.output<(typeof caseParts)[Name]['content']>;
export type CaseContent = { [Name in PartName]: PartContent<Name> };
export const partsOf = (discipline: Discipline): PartName[] =>
  partNames.filter((name) => caseParts[name].discipline === discipline);

/** What a discipline can lack; it is signed when it lacks nothing. */
export const needs = [
  'earlier_signed',
  'symptom',
  'emergency',
  'leader',
  'two_members',
  'statement',
  'is_is_not',
  'timeline',
  'containment',
  'containment_verified',
  'occurrence_tree',
  'non_detection_tree',
  'system_tree',
  'ends_proved',
  'root_cause',
  'escape_point',
  'system_cause',
  'root_cause_proved',
  'correction_against_occurrence',
  'correction_against_escape',
  'corrections_decided',
  'corrective_action',
  'actions_verified',
  'verdict',
  'effective_from',
  'prevention',
  'documents',
  'reach',
  'lesson',
  'closing_words',
  'containment_closed',
  'actions_closed',
  'customer_told',
] as const;
export const Need = z.enum(needs);
export type Need = z.infer<typeof Need>;

/** In whose name a discipline is signed. D0 to D7 by quality; the closure also by the plant's management, and by product safety where the case is safety-relevant. */
export const signRoles = ['quality', 'plant_management', 'product_safety'] as const;
export const SignRole = z.enum(signRoles);
export type SignRole = z.infer<typeof SignRole>;
