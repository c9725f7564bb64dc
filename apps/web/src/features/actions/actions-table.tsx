import { Anchor } from '@mantine/core';
import { Link } from '@tanstack/react-router';
import { useTranslation } from 'react-i18next';
import type { ActionRow } from '#contracts/actions.ts';
import { useFormat } from '#web/ui/language.ts';
import { DataTable } from '#web/ui/table/data-table.tsx';
import type { Column } from '#web/ui/table/table-columns.ts';
import { StateMark, VerdictMark } from './marks.tsx';
import { useActionTerms } from './use-terms.ts';

interface Props {
  caption: string;
  rows: readonly ActionRow[];
  more?: { load: () => void; loading: boolean } | undefined;
}

export const ActionsTable = ({ caption, rows, more }: Props) => (
  <DataTable
    caption={caption}
    hideCaption
    columns={useColumns()}
    rows={rows}
    rowKey={({ id }) => id}
    {...(more && { more })}
  />
);

const useColumns = (): readonly Column<ActionRow>[] => {
  const { t } = useTranslation('actions');
  const { field, kind } = useActionTerms();
  const format = useFormat();
  return [
    {
      id: 'title',
      header: field.title,
      rowHeader: true,
      phone: 'title',
      cell: (row) => (
        <>
          <Anchor inherit renderRoot={(props) => <Link {...props} to="/actions/$id" params={{ id: row.id }} />}>
            {row.number}
          </Anchor>{' '}
          {row.title}
        </>
      ),
    },
    { id: 'kind', header: field.kind, cell: (row) => kind[row.kind] },
    { id: 'owner', header: field.owner, cell: (row) => row.owner },
    { id: 'due', header: field.dueOn, nowrap: true, cell: (row) => format.day(row.dueOn) },
    { id: 'state', header: field.state, cell: (row) => <StateMark action={row} /> },
    { id: 'open', header: field.daysOpen, align: 'end', cell: (row) => format.count(row.daysOpen) },
    {
      id: 'effect',
      header: field.effect,
      cell: ({ effect }) =>
        effect?.verdict ? <VerdictMark verdict={effect.verdict} /> : effect ? t('effectPlanned') : '–',
    },
  ];
};
