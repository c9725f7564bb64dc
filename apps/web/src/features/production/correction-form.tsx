import { Button, Group, Modal, NumberInput, Stack } from '@mantine/core';
import { useForm } from '@mantine/form';
import { useMutation } from '@tanstack/react-query';
import { useTranslation } from 'react-i18next';
import { type Production, updateProduction } from '#contracts/production.ts';
import { refusedFields } from '#web/ui/form.ts';
import { call } from '#web/ui/http.ts';
import { useFormat } from '#web/ui/language.ts';
import { ProblemNote } from '#web/ui/problem.tsx';
import { useForgetProduction } from './queries.ts';

export const CorrectionForm = ({ row, onDone }: { row: Production; onDone: () => void }) => {
  const { t } = useTranslation('production');
  const format = useFormat();
  const forget = useForgetProduction();
  const form = useForm({ initialValues: { units: row.units, terminals: row.terminals } });
  const save = useMutation({
    mutationFn: (body: typeof form.values) =>
      call(updateProduction, { params: { id: row.id }, body, version: row.version }),
    onSuccess: async () => {
      await forget();
      onDone();
    },
    onError: (error) => form.setErrors(refusedFields(error)),
  });
  const title = t('correctRow', { day: format.day(row.day), plant: row.plantCode });
  return (
    <Modal opened onClose={onDone} title={title} centered closeButtonProps={{ 'aria-label': t('cancel') }}>
      <form onSubmit={form.onSubmit((values) => save.mutate(values))}>
        <Stack>
          <NumberInput
            label={t('units')}
            min={0}
            max={100_000_000}
            allowDecimal={false}
            required
            {...form.getInputProps('units')}
          />
          <NumberInput
            label={t('terminals')}
            min={0}
            max={100_000_000}
            allowDecimal={false}
            required
            {...form.getInputProps('terminals')}
          />
          {save.error && <ProblemNote error={save.error} />}
          <Group justify="flex-end">
            <Button variant="default" onClick={onDone}>
              {t('cancel')}
            </Button>
            <Button type="submit" loading={save.isPending}>
              {t('save')}
            </Button>
          </Group>
        </Stack>
      </form>
    </Modal>
  );
};
