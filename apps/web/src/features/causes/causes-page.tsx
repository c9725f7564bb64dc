import { useTranslation } from 'react-i18next';
import { PageHead } from '#web/ui/page-head.tsx';

export const CausesPage = () => {
  const { t } = useTranslation('causes');
  return <PageHead title={t('title')} />;
};
