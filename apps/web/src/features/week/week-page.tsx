import { useTranslation } from 'react-i18next';
import { PageHead } from '#web/ui/page-head.tsx';

export const WeekPage = () => {
  const { t } = useTranslation('week');
  return <PageHead title={t('title')} />;
};
