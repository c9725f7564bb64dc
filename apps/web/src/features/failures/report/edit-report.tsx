import { Button } from '@mantine/core';
import { useTranslation } from 'react-i18next';
import { type Report, type ReportInput, updateReport } from '#contracts/failures.ts';
import { call } from '#web/ui/http.ts';
import { inputOf } from '../form/blank-report.ts';
import { ReportForm } from '../form/report-form.tsx';
import { useReportWrite } from '../queries.ts';

export const EditReport = ({ report, onDone }: { report: Report; onDone: () => void }) => {
  const { t } = useTranslation('failures');
  const save = useReportWrite((body: ReportInput) =>
    call(updateReport, { params: { id: report.id }, body, version: report.version }),
  );
  return (
    <ReportForm
      initial={inputOf(report)}
      plantFixed
      submit={t('report.save')}
      onSubmit={(input) => save.mutateAsync(input).then(onDone)}
      pending={save.isPending}
      error={save.error}
      aside={
        <Button variant="default" onClick={onDone}>
          {t('form.cancel')}
        </Button>
      }
    />
  );
};
