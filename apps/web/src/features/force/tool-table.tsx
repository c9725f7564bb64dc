import { Button } from '@mantine/core';
import { useTranslation } from 'react-i18next';
import type { ForceDetail } from '#contracts/force.ts';
import { useFormat } from '#web/ui/language.ts';
import { DataTable } from '#web/ui/table/data-table.tsx';
import { BelowText } from './below-text.tsx';
import { Verdict } from './verdict.tsx';

interface Props {
  tools: ForceDetail['tools'];
  onTool: (toolId: string) => void;
}

/** Each tool's values judged by themselves, the weakest first. */
export const ToolTable = ({ tools, onTool }: Props) => {
  const { t } = useTranslation('force');
  const format = useFormat();
  return (
    <DataTable
      caption={t('tools.caption')}
      rows={tools}
      rowKey={({ toolId, plantCode }) => `${plantCode} ${toolId}`}
      columns={[
        {
          id: 'tool',
          header: t('tool'),
          rowHeader: true,
          phone: 'title',
          cell: ({ toolId, toolCode }) =>
            toolId ? (
              <Button variant="subtle" size="compact-md" onClick={() => onTool(toolId)}>
                {toolCode}
              </Button>
            ) : (
              t('noTool')
            ),
        },
        { id: 'plant', header: t('plant'), cell: ({ plantCode }) => plantCode },
        { id: 'verdict', header: t('verdict.title'), cell: (row) => <Verdict it={row} /> },
        { id: 'values', header: t('values'), align: 'end', cell: (row) => format.count(row.values) },
        { id: 'mean', header: t('meanN'), align: 'end', cell: (row) => format.significant(row.mean) },
        { id: 'smallest', header: t('smallestN'), align: 'end', cell: (row) => format.significant(row.smallest) },
        {
          id: 'bound',
          header: t('boundN'),
          align: 'end',
          cell: (row) => (row.bound === null ? '–' : format.significant(row.bound)),
        },
        { id: 'below', header: t('belowMillion'), align: 'end', cell: (row) => <BelowText it={row} brief /> },
      ]}
    />
  );
};
