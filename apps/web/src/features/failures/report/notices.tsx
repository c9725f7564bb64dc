import { Alert } from '@mantine/core';
import { useTranslation } from 'react-i18next';
import type { Report } from '#contracts/failures.ts';
import { type Caution, Cautions } from '#web/ui/cautions.tsx';
import { useFormat } from '#web/ui/language.ts';

/** What a reader must know first: the report is void, the circuit is dangerous, the evidence is missing. */
export const Notices = ({ report }: { report: Report }) => {
  const { t } = useTranslation('failures');
  const format = useFormat();
  const cautions: Caution[] = [
    ...(report.safety ? (['safety'] as const) : []),
    ...(report.effect === 'heating' ? (['heating'] as const) : []),
    ...(report.cause === 'adhesive' ? (['adhesive'] as const) : []),
  ];
  const unproven = report.cause !== null && report.proof === null && report.photos.length === 0;
  return (
    <>
      {report.voidedAt && (
        <Alert
          color="red.9"
          variant="outline"
          title={t('report.void', { day: format.instant(report.voidedAt) })}
          mb="md"
        >
          {report.voidReason}
        </Alert>
      )}
      {cautions.length > 0 && <Cautions about={cautions} />}
      {unproven && report.voidedAt === null && (
        <Alert color="petrol" variant="light" title={t('report.unproven')} mb="md">
          {t('report.unprovenText')}
        </Alert>
      )}
    </>
  );
};
