import { useTranslation } from 'react-i18next';
import type { Escapes } from '#contracts/analyses.ts';
import { EstimateText } from '#web/ui/estimate-text.tsx';
import { useFormat, useTerms } from '#web/ui/language.ts';
import { DataTable } from '#web/ui/table/data-table.tsx';
import type { Column } from '#web/ui/table/table-columns.ts';
import classes from './escapes.module.css';

type Gate = Escapes['gates'][number];

const percent = (share: number): string => `${Math.min(1, share) * 100}%`;

const GateBar = ({ gate: { effectiveness } }: { gate: Gate }) =>
  effectiveness.value !== null && (
    <span className={classes.gate} aria-hidden="true">
      <span className={classes.value} style={{ width: percent(effectiveness.value) }} />
      <span
        className={classes.limits}
        style={{
          left: percent(effectiveness.interval.low),
          width: percent((effectiveness.interval.high ?? 1) - effectiveness.interval.low),
        }}
      />
    </span>
  );

export const GatesTable = ({ gates }: { gates: readonly Gate[] }) => {
  const { t } = useTranslation('escapes');
  const format = useFormat();
  const terms = useTerms();
  const share = (value: number) => format.percent(value, 0);
  const columns: Column<Gate>[] = [
    {
      id: 'stage',
      header: t('gates.stage'),
      rowHeader: true,
      phone: 'title',
      cell: ({ stage }) => terms.stage[stage],
    },
    {
      id: 'here',
      header: t('gates.foundHere'),
      align: 'end',
      sortBy: (gate) => gate.foundHere,
      cell: ({ foundHere }) => format.count(foundHere),
    },
    {
      id: 'later',
      header: t('gates.foundLater'),
      align: 'end',
      sortBy: (gate) => gate.foundLater,
      cell: ({ foundLater }) => format.count(foundLater),
    },
    {
      id: 'effectiveness',
      header: t('gates.effectiveness'),
      sortBy: (gate) => gate.effectiveness.value,
      cell: (gate) => (
        <>
          <EstimateText estimate={gate.effectiveness} write={share} writeLimit={share} />
          <GateBar gate={gate} />
        </>
      ),
    },
  ];
  return <DataTable caption={t('gates.caption')} columns={columns} rows={gates} rowKey={({ stage }) => stage} />;
};
