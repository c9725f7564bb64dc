import { Button, Group } from '@mantine/core';
import type { UseFormReturnType } from '@mantine/form';
import { useTranslation } from 'react-i18next';
import { usePlants } from '#web/ui/lookup.ts';
import { dayIn } from '#web/ui/period.ts';
import type { Values } from './kinds.ts';
import { ServiceText } from './service-text.tsx';

const countOr = (value: unknown): number | null => (value === '' || value === null ? null : Number(value));

/** What the form's counts say of the next service, and one press for "it was serviced today". */
export const ServicedButton = ({ form }: { form: UseFormReturnType<Values> }) => {
  const { t } = useTranslation('master-data');
  const { cycleCount, serviceInterval, servicedAtCount, plantId } = form.values;
  const zone = usePlants().find(({ id }) => id === plantId)?.zone ?? 'UTC';
  const counted = {
    cycleCount: Number(cycleCount),
    serviceInterval: countOr(serviceInterval),
    servicedAtCount: Number(servicedAtCount),
  };
  return (
    <Group justify="space-between">
      <span role="status">
        <ServiceText tool={counted} />
      </span>
      <Button
        variant="default"
        onClick={() => form.setValues({ servicedAtCount: cycleCount, servicedOn: dayIn(zone, new Date()) })}
      >
        {t('service.today')}
      </Button>
    </Group>
  );
};
