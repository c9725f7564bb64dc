import { Anchor, Container, Text } from '@mantine/core';
import { Link } from '@tanstack/react-router';
import { useTranslation } from 'react-i18next';
import { PageHead } from '#web/ui/page-head.tsx';

export const NotFound = () => {
  const { t } = useTranslation('app');
  return (
    <Container component="main" size="sm" py="xl">
      <PageHead title={t('notFound.title')} />
      <Text>{t('notFound.text')}</Text>
      <Anchor component={Link} to="/">
        {t('notFound.home')}
      </Anchor>
    </Container>
  );
};
