import { ActionIcon, Button, Select } from '@mantine/core';
import { IconPlus, IconX } from '@tabler/icons-react';
import { useTranslation } from 'react-i18next';
import type { Grant } from '#contracts/people.ts';
import { type Role, roles } from '#contracts/permissions.ts';
import { useTerms } from '#web/ui/language.ts';
import { rowText, usePlants } from '#web/ui/lookup.ts';
import classes from './people.module.css';

interface Props {
  grants: readonly Grant[];
  onChange: (grants: Grant[]) => void;
}
const all = 'all';

/** Any number of roles, each for one plant or for all. */
export const GrantsField = ({ grants, onChange }: Props) => {
  const { t } = useTranslation('people');
  const terms = useTerms();
  const plants = usePlants();
  const put = (place: number, patch: Partial<Grant>) =>
    onChange(grants.map((grant, index) => (index === place ? { ...grant, ...patch } : grant)));

  return (
    <fieldset className={classes.grants}>
      <legend>{t('roles')}</legend>
      {grants.map(({ role, plantId }, place) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a role has no identity but its place in the list
        <div key={place} className={classes.grant}>
          <Select
            label={t('role')}
            data={roles.map((value) => ({ value, label: terms.role[value] }))}
            value={role}
            allowDeselect={false}
            onChange={(value) => value && put(place, { role: value as Role })}
          />
          <Select
            label={t('at')}
            data={[
              { value: all, label: t('everyPlant') },
              ...plants.map((plant) => ({ value: plant.id, label: rowText(plant) })),
            ]}
            value={plantId ?? all}
            allowDeselect={false}
            onChange={(value) => put(place, { plantId: value === all ? null : value })}
          />
          <ActionIcon
            variant="default"
            size="lg"
            aria-label={t('dropRole', { number: place + 1 })}
            onClick={() => onChange(grants.filter((_, index) => index !== place))}
          >
            <IconX size={18} aria-hidden />
          </ActionIcon>
        </div>
      ))}
      <Button
        variant="default"
        size="compact-md"
        leftSection={<IconPlus size={16} aria-hidden />}
        onClick={() => onChange([...grants, { role: 'viewer', plantId: plants[0]?.id ?? null }])}
      >
        {t('addRole')}
      </Button>
    </fieldset>
  );
};
