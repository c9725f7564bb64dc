/** The customer's document from what was read: pure. Costs are not among what it is made from. */
import { type Block, type DocumentContent, textWidth } from '#api/platform/document/blocks.ts';
import { caseTerms as german } from '#contracts/case-terms.de.ts';
import { caseTerms as english } from '#contracts/case-terms.en.ts';
import { findingTerms as germanFindings } from '#contracts/finding-terms.de.ts';
import { findingTerms as englishFindings } from '#contracts/finding-terms.en.ts';
import { formats } from '#contracts/shared/format.ts';
import { terms as germanTrade } from '#contracts/terms.de.ts';
import { terms as englishTrade } from '#contracts/terms.en.ts';
import { disciplineBlocks } from './document.disciplines.ts';
import type { DocumentSource, Words } from './document.source.ts';

function wordsFor({ locale, paper }: DocumentSource, say: Words['say']): Words {
  const findings = locale === 'de' ? germanFindings : englishFindings;
  return {
    terms: locale === 'de' ? german : english,
    trade: locale === 'de' ? germanTrade : englishTrade,
    finding: (code) => findings[code].name,
    format: formats(locale),
    say,
    width: textWidth(paper),
  };
}

function headBlocks({ case: it, head, today }: DocumentSource, { terms, format, say }: Words): Block[] {
  const { document } = terms;
  const rows: [string, string | null][] = [
    [document.number, it.number],
    [document.date, format.day(today)],
    [document.customer, head.customerName],
    [document.reference, head.references.map(say).join(', ')],
    [document.part, head.part && say(head.part)],
    [document.plant, head.plantName],
    [document.state, it.state === 'closed' ? document.closed : document.open],
  ];
  return [
    ...(it.safety ? [{ kind: 'text', text: document.safety, tone: 'caution' } as const] : []),
    { kind: 'facts', rows: rows.flatMap(([label, value]) => (value ? [[label, value] as const] : [])) },
  ];
}

/** By whom it was signed, or only that it was. */
function signedText(
  { case: it, choice, head }: DocumentSource,
  { terms, format }: Words,
  discipline: number,
): string | null {
  const held = it.signatures.filter((one) => one.discipline === discipline && one.voidedAt === null);
  if (held.length === 0) return null;
  const dayOf = (at: string) => new Intl.DateTimeFormat('sv-SE', { timeZone: head.zone }).format(new Date(at));
  const texts = held.map(({ role, signer, signedAt }) =>
    [terms.signRole[role], ...(choice.team ? [signer] : []), format.day(dayOf(signedAt))].join(', '),
  );
  return `${terms.document.signed}: ${texts.join('; ')}`;
}

export function documentContent(source: DocumentSource, say: Words['say']): DocumentContent {
  const words = wordsFor(source, say);
  const { terms } = words;
  const { case: it, choice, head, locale, paper, madeAt } = source;
  const chosen = choice.disciplines.toSorted((a, b) => a - b);
  const title = say(it.title);
  const disciplines = chosen.flatMap((discipline): Block[] => {
    const blocks = disciplineBlocks[discipline](source, words);
    const signed = signedText(source, words, discipline);
    return [
      { kind: 'heading', level: 1, text: `D${discipline} ${terms.discipline[discipline]}` },
      ...(blocks.length > 0 ? blocks : [{ kind: 'text', text: terms.document.notYet, tone: 'muted' } as const]),
      ...(signed ? [{ kind: 'text', text: signed, tone: 'muted' } as const] : []),
    ];
  });
  return {
    title: `${terms.document.report} ${it.number}`,
    subtitle: title,
    running: `${it.number} · ${title.length > 90 ? `${title.slice(0, 88)}…` : title}`,
    foot: `${head.plantName} · ${it.number}`,
    pageOf: (page, pages) => `${terms.document.page} ${page} ${terms.document.of} ${pages}`,
    ...{ locale, paper, madeAt },
    blocks: [
      ...headBlocks(source, words),
      ...disciplines,
      ...(source.pictures.length > 0
        ? ([
            { kind: 'heading', level: 1, text: terms.document.photos },
            { kind: 'pictures', pictures: source.pictures.map((one) => ({ ...one, caption: say(one.caption) })) },
          ] satisfies Block[])
        : []),
      ...(source.files.length > 0
        ? ([
            { kind: 'heading', level: 1, text: terms.document.files },
            {
              kind: 'list',
              items: source.files.map(({ name, caption }) => say(caption ? `${name}: ${caption}` : name)),
            },
          ] satisfies Block[])
        : []),
    ],
  };
}
