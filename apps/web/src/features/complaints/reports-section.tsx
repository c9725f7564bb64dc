import { Anchor, Button, Group, NumberInput, TextInput } from '@mantine/core';
import { Link } from '@tanstack/react-router';
import { useState } from 'react';
import { useTranslation } from 'react-i18next';
import * as contract from '#contracts/complaints.ts';
import { call } from '#web/ui/http.ts';
import { useFormat, useTerms } from '#web/ui/language.ts';
import { ProblemNote } from '#web/ui/problem.tsx';
import classes from './complaints.module.css';
import { useWrite } from './queries.ts';

/** The failure reports a complaint is made of, and how far the evidence on its returned parts is. */
export const ReportsSection = ({ complaint, mayWrite }: { complaint: contract.Complaint; mayWrite: boolean }) => {
  const { t } = useTranslation('complaints');
  const { cause } = useTerms();
  const format = useFormat();
  const [number, setNumber] = useState('');
  const [quantity, setQuantity] = useState<number | string>(complaint.quantity ?? 1);
  const params = { id: complaint.id };
  const link = useWrite((report: string) => call(contract.linkReport, { params, body: { report } }));
  const record = useWrite((quantityFound: number) =>
    call(contract.recordReport, {
      params,
      body: { source: 'customer', quantityFound, foundOn: complaint.foundOn ?? complaint.receivedAt.slice(0, 10) },
    }),
  );
  const unlink = useWrite((reportId: string) => call(contract.unlinkReport, { params: { ...params, reportId } }));
  const error = link.error ?? record.error ?? unlink.error;
  return (
    <section className={classes.section} aria-label={t('reports')}>
      <h2>{t('reports')}</h2>
      {complaint.reports.length === 0 && <p>{t('noReports')}</p>}
      <ul className={classes.cases}>
        {complaint.reports.map((report) => (
          <li key={report.id}>
            <Anchor
              underline="always"
              inherit
              renderRoot={(props) => <Link {...props} to="/failures/$id" params={{ id: report.id }} />}
            >
              {report.number}
            </Anchor>{' '}
            {format.day(report.foundOn)} · {t('pieces', { count: report.quantityFound })} ·{' '}
            {t('findings', { count: report.findingsTaken })} ·{' '}
            {report.cause
              ? t(report.confirmed ? 'causeConfirmed' : 'causeSorted', {
                  cause: cause[report.cause as keyof typeof cause],
                })
              : t('causeOpen')}{' '}
            <Anchor
              underline="always"
              inherit
              renderRoot={(props) => <Link {...props} to="/failures/$id/checklist" params={{ id: report.id }} />}
            >
              {t('checklist')}
            </Anchor>
            {mayWrite && (
              <Button
                variant="subtle"
                size="compact-md"
                className="no-print"
                aria-label={t('unlinkOne', { number: report.number })}
                onClick={() => unlink.mutate(report.id)}
              >
                {t('unlink')}
              </Button>
            )}
          </li>
        ))}
      </ul>
      {mayWrite && (
        <Group align="end" className="no-print">
          <TextInput
            label={t('reportNumber')}
            value={number}
            onChange={(event) => setNumber(event.currentTarget.value)}
          />
          <Button
            variant="default"
            loading={link.isPending}
            disabled={number.trim() === ''}
            onClick={() => link.mutate(number.trim(), { onSuccess: () => setNumber('') })}
          >
            {t('link')}
          </Button>
          <NumberInput
            label={t('field.quantity')}
            min={1}
            allowDecimal={false}
            value={quantity}
            onChange={setQuantity}
          />
          <Button variant="default" loading={record.isPending} onClick={() => record.mutate(Number(quantity))}>
            {t('recordReport')}
          </Button>
        </Group>
      )}
      {error && <ProblemNote error={error} />}
    </section>
  );
};
