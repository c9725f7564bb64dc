import { Alert, Button, Group, List, Text, TextInput } from '@mantine/core';
import { useState } from 'react';
import { useTranslation } from 'react-i18next';
import type { Discipline } from '#contracts/case-parts.ts';
import type { Case } from '#contracts/cases.ts';
import { useFormat } from '#web/ui/language.ts';
import { useMay } from '#web/ui/person.ts';
import { ProblemNote } from '#web/ui/problem.tsx';
import { useReopen, useSign } from './queries.ts';
import { useCaseTerms } from './use-case-terms.ts';

/** What the discipline lacks, who signed it, and the buttons to sign or reopen it. */
export const SignBar = ({ it, discipline }: { it: Case; discipline: Discipline }) => {
  const { t } = useTranslation('cases');
  const terms = useCaseTerms();
  const format = useFormat();
  const sign = useSign(it.id);
  const maySign = useMay('cases.sign', it.plantId);
  const mayWrite = useMay('cases.write', it.plantId);
  const { version, missing, toSignAs, locked } = it.disciplines[discipline]!;
  const signatures = it.signatures.filter((one) => one.discipline === discipline);
  const offered = toSignAs.filter((role) => (role === 'product_safety' ? mayWrite : maySign));
  return (
    <div>
      {signatures.length > 0 && (
        <List size="sm" aria-label={t('signatures')}>
          {signatures.map((one) => (
            <List.Item key={one.id}>
              {t('signedBy', { role: terms.signRole[one.role], signer: one.signer, at: format.instant(one.signedAt) })}{' '}
              {one.voidedAt && t('voided', { by: one.voidedBy, reason: one.voidReason })}
            </List.Item>
          ))}
        </List>
      )}
      {toSignAs.length > 0 && missing.length > 0 && it.state === 'open' && (
        <Alert variant="outline" color="gray.7" title={t('lacks')} my="sm">
          <List size="sm">
            {missing.map((need) => (
              <List.Item key={need}>{terms.need[need]}</List.Item>
            ))}
          </List>
        </Alert>
      )}
      {it.state === 'open' && missing.length === 0 && offered.length > 0 && (
        <Group my="sm" className="no-print">
          {offered.map((role) => (
            <Button key={role} loading={sign.isPending} onClick={() => sign.mutate({ discipline, version, role })}>
              {t('signAs', { discipline: `D${discipline}`, role: terms.signRole[role] })}
            </Button>
          ))}
        </Group>
      )}
      {sign.error && <ProblemNote error={sign.error} />}
      {locked && maySign && it.state !== 'dropped' && <Reopen id={it.id} discipline={discipline} version={version} />}
      {locked && <Text size="sm">{t('locked')}</Text>}
    </div>
  );
};

const Reopen = ({ id, discipline, version }: { id: string; discipline: Discipline; version: number }) => {
  const { t } = useTranslation('cases');
  const [reason, setReason] = useState('');
  const reopen = useReopen(id);
  return (
    <form
      className="no-print"
      onSubmit={(event) => {
        event.preventDefault();
        reopen.mutate({ discipline, version, reason }, { onSuccess: () => setReason('') });
      }}
    >
      <Group align="end" my="sm">
        <TextInput label={t('reopenReason')} value={reason} onChange={(event) => setReason(event.target.value)} />
        <Button type="submit" variant="default" loading={reopen.isPending} disabled={reason.trim().length < 3}>
          {t('reopen', { discipline: `D${discipline}` })}
        </Button>
      </Group>
      {reopen.error && <ProblemNote error={reopen.error} />}
    </form>
  );
};
