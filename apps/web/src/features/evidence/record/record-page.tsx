import { Button, Group } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useTranslation } from 'react-i18next';
import { EmptyNote } from '#web/ui/empty-note.tsx';
import { PeriodPicker } from '#web/ui/filter/period-picker.tsx';
import { PlantPicker } from '#web/ui/filter/plant-picker.tsx';
import { PageHead } from '#web/ui/page-head.tsx';
import { useMay } from '#web/ui/person.ts';
import { QueryBoundary } from '#web/ui/query-boundary.tsx';
import { recordQuery } from '../queries.ts';
import { trackRecordRoute } from '../routes.ts';
import { Agreement } from './agreement.tsx';
import { ByTables } from './by-tables.tsx';
import { CalibrationFigure } from './calibration-figure.tsx';
import { ConfusionTable } from './confusion-table.tsx';
import { Verdict } from './verdict.tsx';

/** The suggestion's own record: how often it is right, whether it means what it says, where it errs. */
export const RecordPage = () => {
  const { t } = useTranslation('evidence');
  const filter = trackRecordRoute.useSearch();
  const query = useQuery(recordQuery(filter));
  const mayGive = useMay('failures.sort');
  return (
    <>
      <PageHead
        title={t('record.title')}
        aside={
          mayGive && (
            <Button
              variant="default"
              className="no-print"
              renderRoot={(props) => <Link {...props} to="/evidence/opinions" />}
            >
              {t('record.toOpinions')}
            </Button>
          )
        }
      >
        {t('record.lead')}
      </PageHead>
      <Group gap="xs" mb="md" role="group" aria-label={t('record.period')}>
        <span>{t('record.period')}:</span>
        <PeriodPicker />
        <PlantPicker />
      </Group>
      <QueryBoundary
        query={query}
        height={40}
        isEmpty={({ cases, agreement }) => cases === 0 && agreement.pairs === 0}
        empty={<EmptyNote title={t('record.none')}>{t('record.noneText')}</EmptyNote>}
      >
        {(record) => (
          <>
            <Verdict record={record} whole={Object.values(filter).every((it) => it === undefined)} />
            <CalibrationFigure record={record} />
            <ConfusionTable record={record} filter={filter} />
            <ByTables record={record} />
            <Agreement record={record} />
          </>
        )}
      </QueryBoundary>
    </>
  );
};
