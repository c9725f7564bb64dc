import { Button, Group, Title } from '@mantine/core';
import { IconPlus } from '@tabler/icons-react';
import { useInfiniteQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { useTranslation } from 'react-i18next';
import type { ActionKind } from '#contracts/actions.ts';
import { useMay } from '#web/ui/person.ts';
import { QueryBoundary } from '#web/ui/query-boundary.tsx';
import { ActionForm } from './action-form.tsx';
import { ActionsTable } from './actions-table.tsx';
import { actionsQuery } from './queries.ts';

export interface Origin {
  complaintId?: string;
  containmentId?: string;
  caseId?: string;
  reviewId?: string;
}

interface Props {
  /** Plant where a new action is opened. */
  plantId: string;
  /** What the actions come from; its actions at other plants are shown where the reader may see them. */
  origin: Origin;
  /** Kind that a new action has at first. */
  kind?: ActionKind;
  title?: string;
}

/** The actions of a complaint, containment, case or review, and a way to open another. */
export const ActionsPanel = ({ plantId, origin, kind, title }: Props) => {
  const { t } = useTranslation('actions');
  const [opening, setOpening] = useState(false);
  const mayOpen = useMay('actions.write', plantId);
  const filter = {
    ...(origin.complaintId && { complaint: origin.complaintId }),
    ...(origin.containmentId && { containment: origin.containmentId }),
    ...(origin.caseId && { case: origin.caseId }),
    ...(origin.reviewId && { review: origin.reviewId }),
  };
  const list = useInfiniteQuery(actionsQuery(filter, 100));
  return (
    <section aria-label={title ?? t('title')}>
      <Group justify="space-between" mb="sm">
        <Title order={2}>{title ?? t('title')}</Title>
        {mayOpen && (
          <Button
            variant="default"
            className="no-print"
            leftSection={<IconPlus size={18} aria-hidden />}
            onClick={() => setOpening(true)}
          >
            {t('new')}
          </Button>
        )}
      </Group>
      <QueryBoundary query={list} isEmpty={({ pages }) => pages[0]?.items.length === 0} empty={<p>{t('panelNone')}</p>}>
        {({ pages }) => (
          <ActionsTable
            caption={title ?? t('title')}
            rows={pages.flatMap(({ items }) => items)}
            more={
              list.hasNextPage ? { load: () => void list.fetchNextPage(), loading: list.isFetchingNextPage } : undefined
            }
          />
        )}
      </QueryBoundary>
      {opening && <ActionForm plantId={plantId} origin={origin} kind={kind} onDone={() => setOpening(false)} />}
    </section>
  );
};
