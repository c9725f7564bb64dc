import { Anchor } from '@mantine/core';
import { Link } from '@tanstack/react-router';
import { useTranslation } from 'react-i18next';
import type { ForceGroup } from '#contracts/force.ts';
import { useFormat, useTerms } from '#web/ui/language.ts';
import { DataTable } from '#web/ui/table/data-table.tsx';
import { BelowText } from './below-text.tsx';
import { Verdict } from './verdict.tsx';

interface Props {
  groups: readonly ForceGroup[];
  filter: { from?: string | undefined; to?: string | undefined; plant?: string[] | undefined };
}

export const GroupTable = ({ groups, filter }: Props) => {
  const { t } = useTranslation('force');
  const format = useFormat();
  const terms = useTerms();
  const newtons = (value: number | null) => (value === null ? '–' : format.significant(value));
  return (
    <DataTable
      caption={t('overview.caption')}
      rows={groups}
      rowKey={({ kind, terminalId }) => `${kind} ${terminalId}`}
      columns={[
        {
          id: 'terminal',
          header: t('terminal'),
          rowHeader: true,
          phone: 'title',
          nowrap: true,
          sortBy: (row) => row.terminalCode,
          cell: ({ terminalId, terminalCode, kind }) => (
            <Anchor
              inherit
              renderRoot={(props) => (
                <Link {...props} to="/force/$id" params={{ id: terminalId }} search={{ ...filter, kind }} />
              )}
            >
              {terminalCode} · {terms.forceKind[kind]}
            </Anchor>
          ),
        },
        { id: 'verdict', header: t('verdict.title'), cell: (row) => <Verdict it={row} weakTools={row.weakTools} /> },
        { id: 'minimum', header: t('minimumN'), align: 'end', cell: (row) => newtons(row.minimumN) },
        {
          id: 'bound',
          header: t('boundN'),
          align: 'end',
          sortBy: (row) => row.bound,
          cell: (row) => newtons(row.bound),
        },
        {
          id: 'smallest',
          header: t('smallestN'),
          align: 'end',
          sortBy: (row) => row.smallest,
          cell: (row) => newtons(row.smallest),
        },
        {
          id: 'under',
          header: t('valuesBelow'),
          align: 'end',
          sortBy: (row) => row.belowInSample,
          cell: (row) => t('belowOf', { below: format.count(row.belowInSample), values: format.count(row.values) }),
        },
        {
          id: 'below',
          header: t('belowMillion'),
          align: 'end',
          sortBy: (row) => row.below?.value ?? null,
          cell: (row) => <BelowText it={row} brief />,
        },
        { id: 'newest', header: t('newest'), align: 'end', cell: (row) => format.day(row.newest) },
      ]}
    />
  );
};
