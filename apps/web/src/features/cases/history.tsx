import { Button, Text, Title } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { useTranslation } from 'react-i18next';
import { useFormat } from '#web/ui/language.ts';
import { QueryBoundary } from '#web/ui/query-boundary.tsx';
import { historyQuery } from './queries.ts';
import { useCaseTerms } from './use-case-terms.ts';

/** Who changed what, newest first; asked for only when somebody wants it. */
export const History = ({ id }: { id: string }) => {
  const { t } = useTranslation('cases');
  const [wanted, setWanted] = useState(false);
  return (
    <section aria-label={t('history')} className="no-print">
      <Title order={2}>{t('history')}</Title>
      {wanted ? (
        <Changes id={id} />
      ) : (
        <Button variant="default" onClick={() => setWanted(true)}>
          {t('showHistory')}
        </Button>
      )}
    </section>
  );
};

/** Actions of the trail that have words of their own; the others save a part. */
const plain = {
  opened: 'opened',
  changed: 'changed',
  dropped: 'dropped',
  commented: 'commented',
  signed: 'signed',
  reopened: 'reopened',
  closed: 'closed',
  'file added': 'fileAdded',
  'file removed': 'fileRemoved',
  'document kept': 'documentKept',
} as const;

const Changes = ({ id }: { id: string }) => {
  const { t } = useTranslation('cases');
  const terms = useCaseTerms();
  const format = useFormat();
  const words = (action: string, after: Record<string, unknown> | null) => {
    const known = action in plain ? plain[action as keyof typeof plain] : null;
    const where = typeof after?.discipline === 'number' ? ` D${after.discipline}` : '';
    if (known) return `${t(`did.${known}`)}${where}${after?.reason ? `: ${after.reason}` : ''}`;
    return t('did.saved', { part: terms.part[action.replace(/ saved$/, '') as keyof typeof terms.part] ?? action });
  };
  return (
    <QueryBoundary query={useQuery(historyQuery(id))}>
      {({ items }) => (
        <ul>
          {items.map(({ id: entry, at, actor, action, after }) => (
            <li key={entry}>
              <Text size="sm">
                {format.instant(at)}, {actor}: {words(action, after)}
              </Text>
            </li>
          ))}
        </ul>
      )}
    </QueryBoundary>
  );
};
