import { Skeleton, Stack } from '@mantine/core';
import { useTranslation } from 'react-i18next';

/** While the parts of a page are still on their way. */
export const PagePending = () => {
  const { t } = useTranslation('ui');
  return (
    <div aria-busy>
      <span role="status" className="visually-hidden">
        {t('loading')}
      </span>
      <Stack aria-hidden p="md">
        <Skeleton height="2rem" width="30%" />
        <Skeleton height="1.25rem" width="55%" />
        <Skeleton height="20rem" />
      </Stack>
    </div>
  );
};
