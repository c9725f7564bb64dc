import { Anchor } from '@mantine/core';
import { Link } from '@tanstack/react-router';
import { useTranslation } from 'react-i18next';
import { EmptyNote } from '#web/ui/empty-note.tsx';

/** Nothing found, or nothing there at all: each has its own way on. */
export const NoReports = ({ filtered }: { filtered: boolean }) => {
  const { t } = useTranslation('failures');
  if (filtered) return <EmptyNote />;
  return (
    <EmptyNote title={t('list.noneTitle')}>
      {t('list.none')}{' '}
      <Anchor component={Link} to="/record">
        {t('list.recordFirst')}
      </Anchor>
    </EmptyNote>
  );
};
