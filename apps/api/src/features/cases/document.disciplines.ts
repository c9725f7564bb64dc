/** One function a discipline: what the team wrote, as blocks. Empty parts say that they are in progress. */
import type { Block } from '#api/platform/document/blocks.ts';
import { timelineFigure } from '#api/platform/document/figures/timeline-figure.ts';
import { treeFigures } from '#api/platform/document/figures/tree-figure.ts';
import { type Discipline, isIsNotAspects, type ProofLink, type TreeName, treeNames } from '#contracts/case-parts.ts';
import { daysBetween } from '#contracts/shared/format.ts';
import { effectBlocks } from './document.effect.ts';
import type { DocumentSource, Words } from './document.source.ts';
import { orderedNodes } from './tree.rules.ts';

type Blocks = (source: DocumentSource, words: Words) => Block[];
const heading = (text: string): Block => ({ kind: 'heading', level: 2, text });

/** Rows that say something. */
function factsOf({ say }: Words, rows: readonly (readonly [string, string | null])[]): Block[] {
  const told = rows.flatMap(([label, value]) => (value?.trim() ? [[label, say(value)] as const] : []));
  return told.length > 0 ? [{ kind: 'facts', rows: told }] : [];
}

function actionsOf({ actions }: DocumentSource, words: Words, kinds: readonly string[]): Block[] {
  const { terms, format, say } = words;
  const rows = actions
    .filter(({ kind }) => kinds.includes(kind))
    .map(({ title, due, state }) => [say(title), format.day(due), terms.actionState[state]]);
  if (rows.length === 0) return [];
  const columns = [
    { title: terms.document.action, share: 0.62 },
    { title: terms.document.due, share: 0.18 },
    { title: terms.document.actionState, share: 0.2 },
  ];
  return [heading(terms.document.actions), { kind: 'table', columns, rows }];
}

const problem: Blocks = ({ case: { parts } }, words) => {
  const { terms, format, say, width } = words;
  const { problem: it, timeline } = { problem: parts.problem.content, timeline: parts.timeline.content };
  const rows = isIsNotAspects.flatMap((aspect) => it.rows.filter((row) => row.aspect === aspect));
  const titles = [
    terms.document.aspect,
    terms.document.is,
    terms.document.isNot,
    terms.document.difference,
    terms.document.change,
  ];
  const shares = [0.12, 0.24, 0.24, 0.2, 0.2];
  const events = timeline.events.toSorted((a, b) => (a.on < b.on ? -1 : 1));
  const first = events[0]?.on ?? '';
  const figure = timelineFigure(
    events.map(({ on, text }) => ({ at: daysBetween(first, on), label: format.day(on), text: say(text) })),
    width,
    terms.document.timeline,
  );
  return [
    ...factsOf(words, [[terms.document.statement, it.statement]]),
    ...(rows.length > 0
      ? ([
          {
            kind: 'table',
            columns: titles.map((title, place) => ({ title, share: shares[place]! })),
            rows: rows.map((row) => [
              terms.aspect[row.aspect],
              ...[row.is, row.isNot, row.difference, row.change].map((text) => say(text)),
            ]),
          },
        ] satisfies Block[])
      : []),
    ...(events.length > 0
      ? ([heading(terms.document.timeline), { kind: 'figure', figure, caption: '' }] satisfies Block[])
      : []),
  ];
};

function proofText(link: ProofLink, { case: it }: DocumentSource, { terms, finding, say }: Words): string {
  const numberOf = (id: string) => it.reports.find((report) => report.id === id)?.number ?? '';
  const { document } = terms;
  switch (link.kind) {
    case 'test':
      return `${document.test}: ${say(link.text)}`;
    case 'report':
      return `${document.report8d} ${numberOf(link.failureId)}`;
    case 'finding':
      return `${document.finding}: ${finding(link.code)} (${numberOf(link.failureId)})`;
    case 'photo': {
      const photo = it.reports.flatMap(({ photos }) => photos).find(({ id }) => id === link.photoId);
      return say([document.photo, photo?.caption].filter(Boolean).join(': '));
    }
    case 'attachment': {
      const file = it.attachments.find(({ id }) => id === link.attachmentId);
      return say([document.file, file?.caption ?? file?.name].filter(Boolean).join(': '));
    }
  }
}

function treeBlocks(name: TreeName, source: DocumentSource, words: Words): Block[] {
  const { parts } = source.case;
  const { terms, say, width } = words;
  const root = parts.root_cause.content;
  const chosen = { occurrence: root.occurrence, non_detection: root.escape, system: root.system }[name].nodeId;
  const nodes = orderedNodes(parts[name].content).map(({ node, depth }) => ({
    depth,
    text: node.ruledOut ? `${say(node.text)} (${terms.document.ruledOut})` : say(node.text),
    notes: node.proof.map((link) => proofText(link, source, words)),
    look: node.id === chosen ? ('chosen' as const) : node.ruledOut ? ('ruled-out' as const) : ('plain' as const),
  }));
  if (nodes.length === 0) return [];
  const figures = treeFigures(nodes, width, terms.tree[name]);
  return [heading(terms.tree[name]), ...figures.map((figure): Block => ({ kind: 'figure', figure, caption: '' }))];
}

const rootCause: Blocks = (source, words) => {
  const { occurrence, escape: passed, system, verification } = source.case.parts.root_cause.content;
  const { terms, trade } = words;
  const { document } = terms;
  const origin = occurrence.origin ? trade.stage[occurrence.origin] : null;
  return [
    ...treeNames.flatMap((name) => treeBlocks(name, source, words)),
    ...factsOf(words, [
      [document.rootCause, occurrence.statement],
      [document.cause, occurrence.cause ? trade.cause[occurrence.cause] : null],
      [document.origin, origin],
      [document.escapePoint, passed.statement],
      [document.stage, passed.stage ? trade.stage[passed.stage] : null],
      [document.systemCause, system.statement],
      [document.verification, verification],
    ]),
  ];
};

const corrections: Blocks = ({ case: { parts } }, { terms, say }) => {
  const { document } = terms;
  const { options } = parts.corrections.content;
  if (options.length === 0) return [];
  const decided = (chosen: boolean | null) =>
    chosen === null ? document.undecided : chosen ? document.chosen : document.rejected;
  return [
    {
      kind: 'table',
      columns: [
        { title: terms.part.corrections, share: 0.4 },
        { title: document.cause, share: 0.15 },
        { title: document.actionState, share: 0.12 },
        { title: document.reason, share: 0.33 },
      ],
      rows: options
        .toSorted((a, b) => Number(b.chosen ?? false) - Number(a.chosen ?? false))
        .map(({ text, against, chosen, reason }) => [say(text), terms.against[against], decided(chosen), say(reason)]),
    },
  ];
};

const prevention: Blocks = (source, words) => {
  const { terms, say, format } = words;
  const { document } = terms;
  const { systems, documents, noDocuments } = source.case.parts.prevention.content;
  return [
    ...factsOf(words, [[document.prevention, systems]]),
    ...(documents.length > 0
      ? ([
          {
            kind: 'table',
            columns: [
              { title: document.documents, share: 0.58 },
              { title: document.revision, share: 0.2 },
              { title: document.changedOn, share: 0.22 },
            ],
            rows: documents.map(({ kind, name, revision, changedOn }) => [
              `${terms.documentKind[kind]}: ${say(name)}`,
              say(revision),
              changedOn ? format.day(changedOn) : '',
            ]),
          },
        ] satisfies Block[])
      : factsOf(words, [[`${document.documents}: ${document.notNeeded.toLowerCase()}`, noDocuments]])),
    ...actionsOf(source, words, ['preventive', 'read_across']),
  ];
};

/** What each discipline shows. */
export const disciplineBlocks: Record<Discipline, Blocks> = {
  0: ({ case: { parts } }, words) => {
    const { symptom, emergency, why } = parts.plan.content;
    const { document } = words.terms;
    return factsOf(words, [
      [document.symptom, symptom],
      [document.emergency, emergency],
      [document.why, why],
    ]);
  },
  1: ({ case: { parts }, choice }, { terms, say }) => {
    const { members } = parts.team.content;
    if (members.length === 0) return [];
    const named = choice.team ? [{ title: terms.document.name, share: 0.4 }] : [];
    const rest = (1 - named.length * 0.4) / 2;
    return [
      {
        kind: 'table',
        columns: [
          ...named,
          { title: terms.document.role, share: rest },
          { title: terms.document.company, share: rest },
        ],
        rows: members.map(({ name, role, company }) => [
          ...(choice.team ? [say(name)] : []),
          terms.teamRole[role],
          say(company ?? ''),
        ]),
      },
    ];
  },
  2: problem,
  3: (source, words) => {
    const { summary, verification, cleanPoint, cleanMark, notNeeded } = source.case.parts.containment.content;
    const { document } = words.terms;
    return [
      ...factsOf(words, [
        [document.containment, summary],
        [document.verification, verification],
        [document.cleanPoint, cleanPoint && words.format.day(cleanPoint)],
        [document.cleanMark, cleanMark],
        [document.notNeeded, notNeeded],
      ]),
      ...actionsOf(source, words, ['containment']),
    ];
  },
  4: rootCause,
  5: corrections,
  6: (source, words) => {
    const { summary, effectiveFrom } = source.case.parts.validation.content;
    const { document } = words.terms;
    return [
      ...factsOf(words, [
        [document.verification, summary],
        [document.effectiveFrom, effectiveFrom && words.format.day(effectiveFrom)],
      ]),
      ...actionsOf(source, words, ['corrective']),
      ...source.effects.flatMap((it) => effectBlocks(it, words)),
    ];
  },
  7: prevention,
  8: ({ case: { parts } }, words) => {
    const { summary, thanks } = parts.closure.content;
    return factsOf(words, [
      [words.terms.document.closing, summary],
      [words.terms.document.thanks, thanks],
    ]);
  },
};
