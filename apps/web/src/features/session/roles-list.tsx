import { List } from '@mantine/core';
import { useTranslation } from 'react-i18next';
import type { Me } from '#contracts/people.ts';
import { useTerms } from '#web/ui/language.ts';
import { usePlants } from '#web/ui/lookup.ts';

export const RolesList = ({ grants }: Pick<Me, 'grants'>) => {
  const { t } = useTranslation('session');
  const terms = useTerms();
  const names = new Map(usePlants().map(({ id, name }) => [id, name]));
  return (
    <List>
      {grants.map(({ role, plantId }) => (
        <List.Item key={`${role}-${plantId}`}>
          {terms.role[role]}: {plantId === null ? t('account.everyPlant') : names.get(plantId)}
        </List.Item>
      ))}
    </List>
  );
};
