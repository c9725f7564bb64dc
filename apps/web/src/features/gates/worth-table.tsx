import { useTranslation } from 'react-i18next';
import type { Gate, Gates } from '#contracts/gates.ts';
import type { Stage } from '#contracts/taxonomy.ts';
import { EstimateText } from '#web/ui/estimate-text.tsx';
import { useFormat, useTerms } from '#web/ui/language.ts';
import { DataTable } from '#web/ui/table/data-table.tsx';
import type { Column } from '#web/ui/table/table-columns.ts';
import { PointCost } from './point-cost.tsx';

interface Props {
  data: Gates;
  write: (minor: number) => string;
  onCost: (gate: Stage, minor: number | undefined) => void;
}

/** What one more point of detection saves at each gate, and where its cost is typed in. */
export const WorthTable = ({ data, write, onCost }: Props) => {
  const { t } = useTranslation('gates');
  const format = useFormat();
  const terms = useTerms();
  const columns: Column<Gate>[] = [
    {
      id: 'stage',
      header: t('table.gate'),
      rowHeader: true,
      phone: 'title',
      cell: ({ stage }) => terms.stage[stage],
    },
    {
      id: 'faults',
      header: t('worth.faults'),
      align: 'end',
      cell: ({ faultsPerYear }) => <EstimateText estimate={faultsPerYear} brief />,
    },
    {
      id: 'point',
      header: t('worth.onePoint'),
      align: 'end',
      sortBy: ({ onePoint }) => onePoint.value,
      cell: ({ onePoint }) => <EstimateText estimate={onePoint} write={write} writeLimit={write} brief />,
    },
    {
      id: 'cost',
      header: t('worth.cost'),
      align: 'end',
      cell: ({ stage, pointCostMinor }) => (
        <PointCost
          key={`${data.currency} ${pointCostMinor}`}
          label={t('worth.costOf', { stage: terms.stage[stage] })}
          currency={data.currency}
          kept={pointCostMinor}
          onKeep={(minor) => onCost(stage, minor)}
        />
      ),
    },
    {
      id: 'perMoney',
      header: t('worth.perMoney'),
      align: 'end',
      cell: ({ perMoneySpent }) =>
        perMoneySpent === null ? (
          '–'
        ) : (
          <EstimateText
            estimate={perMoneySpent}
            write={(value) => format.significant(value, 2)}
            writeLimit={(value) => format.significant(value, 2)}
            brief
          />
        ),
    },
    {
      id: 'best',
      header: t('worth.best'),
      align: 'end',
      sortBy: ({ probabilityBest }) => probabilityBest,
      cell: ({ probabilityBest }) => format.drawn(probabilityBest),
    },
  ];
  return <DataTable caption={t('worth.caption')} columns={columns} rows={data.gates} rowKey={({ stage }) => stage} />;
};
