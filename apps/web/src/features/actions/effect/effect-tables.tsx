import { useTranslation } from 'react-i18next';
import type { Effect, EffectLook } from '#contracts/effects.ts';
import type { Filter } from '#contracts/shared/filter.ts';
import { useFormat } from '#web/ui/language.ts';
import { ReportsLink } from '#web/ui/reports-link.tsx';
import { DataTable } from '#web/ui/table/data-table.tsx';
import type { Column } from '#web/ui/table/table-columns.ts';
import { VerdictMark } from '../marks.tsx';
import { useEffectText } from './use-effect-text.ts';

type Week = Effect['weeks'][number];

export const WeeksTable = ({ weeks, filter }: { weeks: readonly Week[]; filter: Partial<Filter> }) => {
  const { t } = useTranslation('actions');
  const format = useFormat();
  const text = useEffectText();
  const columns: Column<Week>[] = [
    { id: 'week', header: t('weeks.week'), rowHeader: true, phone: 'title', cell: ({ from }) => format.week(from) },
    {
      id: 'failures',
      header: t('weeks.failures'),
      align: 'end',
      cell: ({ from, to, failures }) => (
        <ReportsLink filter={{ ...filter, builtFrom: from, builtTo: to }}>{format.count(failures)}</ReportsLink>
      ),
    },
    {
      id: 'exposure',
      header: t('weeks.exposure'),
      align: 'end',
      cell: ({ exposure }) => (exposure === null ? '–' : format.count(exposure)),
    },
    { id: 'rate', header: t('effect.unit'), align: 'end', cell: ({ rate }) => text.rate(rate) },
  ];
  return <DataTable caption={t('weeks.title')} columns={columns} rows={weeks} rowKey={({ from }) => from} />;
};

interface LooksProps {
  looks: readonly EffectLook[];
  kept: readonly EffectLook[];
}

/** Every look: what today's data say of it, and what was said at the time. */
export const LooksTable = ({ looks, kept }: LooksProps) => {
  const { t } = useTranslation('actions');
  const format = useFormat();
  const text = useEffectText();
  const columns: Column<EffectLook>[] = [
    { id: 'day', header: t('looks.day'), rowHeader: true, phone: 'title', cell: ({ day }) => format.day(day) },
    { id: 'failures', header: t('weeks.failures'), align: 'end', cell: ({ failures }) => format.count(failures) },
    {
      id: 'exposure',
      header: t('weeks.exposure'),
      align: 'end',
      cell: ({ exposure }) => (exposure === null ? '–' : format.count(exposure)),
    },
    {
      id: 'ratio',
      header: t('effect.ratio'),
      align: 'end',
      cell: ({ ratio, interval }) =>
        [ratio === null ? '–' : format.significant(ratio), interval && `(${text.limits(interval)})`]
          .filter(Boolean)
          .join(' '),
    },
    { id: 'verdict', header: t('looks.verdict'), cell: ({ verdict }) => <VerdictMark verdict={verdict} /> },
  ];
  return (
    <details>
      <summary>{t('looks.title', { count: looks.length })}</summary>
      <DataTable caption={t('looks.recomputed')} columns={columns} rows={looks} rowKey={({ day }) => day} />
      {kept.length > 0 && (
        <DataTable caption={t('looks.kept')} columns={columns} rows={kept} rowKey={({ day }) => day} />
      )}
    </details>
  );
};
