import { useMutation } from '@tanstack/react-query';
import { useNavigate } from '@tanstack/react-router';
import { useState } from 'react';
import { useTranslation } from 'react-i18next';
import { uuidv7 } from 'uuidv7';
import { createReport, type ReportInput } from '#contracts/failures.ts';
import { call } from '#web/ui/http.ts';
import { usePlants } from '#web/ui/lookup.ts';
import { PageHead } from '#web/ui/page-head.tsx';
import { dayIn } from '#web/ui/period.ts';
import { may, usePerson } from '#web/ui/person.ts';
import { useForgetReports } from '../queries.ts';
import { blankReport } from './blank-report.ts';
import { ReportForm } from './report-form.tsx';

/** A report from the desk: a customer's complaint, an audit finding, a field return. */
export const NewReportPage = () => {
  const { t } = useTranslation('failures');
  const navigate = useNavigate();
  const person = usePerson();
  const forget = useForgetReports();
  const plants = usePlants().filter(({ id }) => may(person, 'failures.write', id));
  const [id] = useState(uuidv7);
  const create = useMutation({
    mutationFn: (report: ReportInput) => call(createReport, { body: { ...report, id }, idempotencyKey: id }),
    onSuccess: async (report) => {
      await forget();
      await navigate({ to: '/failures/$id', params: { id: report.id } });
    },
  });
  const [first] = plants;

  return (
    <>
      <PageHead title={t('new.title')}>{t('new.lead')}</PageHead>
      {first && (
        <ReportForm
          initial={blankReport(plants.length === 1 ? first.id : '', dayIn(first.zone, new Date()))}
          submit={t('new.send')}
          onSubmit={create.mutateAsync}
          pending={create.isPending}
          error={create.error}
        />
      )}
    </>
  );
};
