import { useTranslation } from 'react-i18next';
import { PageHead } from '#web/ui/page-head.tsx';

export const EscapesPage = () => {
  const { t } = useTranslation('escapes');
  return <PageHead title={t('title')} />;
};
