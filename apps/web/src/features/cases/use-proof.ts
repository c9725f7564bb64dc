import { useQueries } from '@tanstack/react-query';
import { useTranslation } from 'react-i18next';
import type { ProofLink } from '#contracts/case-parts.ts';
import type { Case } from '#contracts/cases.ts';
import { evidenceQuery } from '#web/features/evidence/queries.ts';
import { useFindingTerms } from '#web/features/evidence/use-findings.ts';

/** What a link to proof is called. */
export function useProofNames(of: Case): (link: ProofLink) => string {
  const { t } = useTranslation('cases');
  const findings = useFindingTerms();
  const report = (id: string) => of.reports.find((it) => it.id === id)?.number ?? '?';
  return (link) => {
    if (link.kind === 'test') return t('proof.test', { text: link.text });
    if (link.kind === 'report') return t('proof.report', { number: report(link.failureId) });
    if (link.kind === 'finding')
      return t('proof.finding', { finding: findings[link.code].name, number: report(link.failureId) });
    if (link.kind === 'attachment')
      return t('proof.file', { name: of.attachments.find(({ id }) => id === link.attachmentId)?.name ?? '?' });
    const owner = of.reports.find(({ photos }) => photos.some(({ id }) => id === link.photoId));
    const caption = owner?.photos.find(({ id }) => id === link.photoId)?.caption;
    return t('proof.photo', { name: caption ?? owner?.number ?? '?' });
  };
}

/** Everything of the case that an end of a tree can rest on; findings of the first ten reports. */
export function useProofOptions(of: Case): { value: string; label: string }[] {
  const nameOf = useProofNames(of);
  const evidence = useQueries({ queries: of.reports.slice(0, 10).map(({ id }) => evidenceQuery(id)) });
  const links: ProofLink[] = [
    ...of.reports.map(({ id }): ProofLink => ({ kind: 'report', failureId: id })),
    ...evidence.flatMap(({ data }, place) =>
      (data?.findings ?? [])
        .filter(({ source }) => source !== 'computed')
        .map(({ code }): ProofLink => ({ kind: 'finding', failureId: of.reports[place]!.id, code })),
    ),
    ...of.reports.flatMap(({ photos }) => photos.map(({ id }): ProofLink => ({ kind: 'photo', photoId: id }))),
    ...of.attachments.map(({ id }): ProofLink => ({ kind: 'attachment', attachmentId: id })),
  ];
  return links.map((link) => ({ value: JSON.stringify(link), label: nameOf(link) }));
}
