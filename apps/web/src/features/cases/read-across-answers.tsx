import { Title } from '@mantine/core';
import { useTranslation } from 'react-i18next';
import type { Case } from '#contracts/cases.ts';
import { DataTable } from '#web/ui/table/data-table.tsx';

/** What the plants that were asked have answered. */
export const ReadAcrossAnswers = ({ it }: { it: Case }) => {
  const { t } = useTranslation('cases');
  if (it.readAcross.length === 0) return null;
  return (
    <section aria-label={t('asked')}>
      <Title order={3}>{t('asked')}</Title>
      <DataTable
        caption={t('asked')}
        hideCaption
        rows={it.readAcross}
        rowKey={({ plantCode }) => plantCode}
        columns={[
          { id: 'plant', header: t('plant'), rowHeader: true, phone: 'title', cell: ({ plantCode }) => plantCode },
          { id: 'answer', header: t('answer'), cell: ({ answer }) => t(`answers.${answer ?? 'open'}`) },
          { id: 'text', header: t('why'), cell: ({ answerText }) => answerText ?? '–' },
          { id: 'by', header: t('by'), cell: ({ answeredBy }) => answeredBy ?? '–' },
        ]}
      />
    </section>
  );
};
