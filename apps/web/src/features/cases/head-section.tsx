import { Anchor, Button, Group, TextInput } from '@mantine/core';
import { Link } from '@tanstack/react-router';
import { useState } from 'react';
import { useTranslation } from 'react-i18next';
import type { Case } from '#contracts/cases.ts';
import { listReports } from '#contracts/failures.ts';
import { call } from '#web/ui/http.ts';
import { ProblemNote } from '#web/ui/problem.tsx';
import classes from './cases.module.css';
import { useUpdateHead } from './queries.ts';

/** What the case is about: customer, part, complaints and reports; a report is linked by its number. */
export const HeadSection = ({ it, mayWrite }: { it: Case; mayWrite: boolean }) => {
  const { t } = useTranslation('cases');
  const facts = [
    [t('customer'), it.customerCode],
    [t('housing'), it.housingCode],
    [t('terminal'), it.terminalCode],
    [t('complaints'), it.complaints.map(({ number }) => number).join(', ')],
  ] as const;
  return (
    <section className={classes.headSection} aria-label={t('about')}>
      <dl>
        {facts.map(([label, value]) => (
          <div key={label}>
            <dt>{label}</dt>
            <dd>{value || '–'}</dd>
          </div>
        ))}
        <div>
          <dt>{t('reports', { count: it.reports.length })}</dt>
          <dd>
            {it.reports.map(({ id, number }) => (
              <Anchor key={id} mr="sm" renderRoot={(props) => <Link {...props} to="/failures/$id" params={{ id }} />}>
                {number}
              </Anchor>
            ))}
            {it.reports.length === 0 && '–'}
          </dd>
        </div>
      </dl>
      {mayWrite && <LinkReport it={it} />}
    </section>
  );
};

const LinkReport = ({ it }: { it: Case }) => {
  const { t } = useTranslation('cases');
  const [number, setNumber] = useState('');
  const [unknown, setUnknown] = useState(false);
  const update = useUpdateHead(it.id);
  const link = async () => {
    const { items } = await call(listReports, { query: { plant: [it.plantId], q: number.trim(), limit: 5 } });
    const found = items.find((row) => row.number === number.trim());
    setUnknown(!found);
    if (!found) return;
    const { title, safety, customerId, housingId, terminalId, complaints, reports } = it;
    const body = { title, safety, customerId, housingId, terminalId };
    update.mutate(
      {
        version: it.version,
        body: {
          ...body,
          complaintIds: complaints.map(({ id }) => id),
          reportIds: [...reports.map(({ id }) => id), found.id],
        },
      },
      { onSuccess: () => setNumber('') },
    );
  };
  return (
    <form
      className="no-print"
      onSubmit={(event) => {
        event.preventDefault();
        void link();
      }}
    >
      <Group align="end">
        <TextInput
          label={t('linkReport')}
          value={number}
          onChange={(event) => setNumber(event.target.value)}
          error={unknown && t('noSuchReport')}
        />
        <Button type="submit" variant="default" loading={update.isPending} disabled={number.trim().length < 3}>
          {t('link')}
        </Button>
      </Group>
      {update.error && <ProblemNote error={update.error} />}
    </form>
  );
};
