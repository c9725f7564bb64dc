import { Button, Group, Modal, Stack, Text, Textarea, TextInput } from '@mantine/core';
import { useForm } from '@mantine/form';
import { useMutation } from '@tanstack/react-query';
import { useTranslation } from 'react-i18next';
import { addDays } from '#contracts/shared/format.ts';
import { signalName } from '#contracts/signal-words.ts';
import { type Signal, silenceSignal } from '#contracts/signals.ts';
import type { FilterValues } from '#web/ui/filter/use-filter.ts';
import { refusedFields } from '#web/ui/form.ts';
import { call } from '#web/ui/http.ts';
import { useLocale } from '#web/ui/language.ts';
import { dayIn } from '#web/ui/period.ts';
import { ProblemNote } from '#web/ui/problem.tsx';
import { useForgetSignals } from './queries.ts';

const usualDays = 91;

export const SilenceForm = ({
  signal,
  filter,
  onDone,
}: {
  signal: Signal;
  filter: FilterValues;
  onDone: () => void;
}) => {
  const { t } = useTranslation('signals');
  const locale = useLocale();
  const forget = useForgetSignals();
  const form = useForm({ initialValues: { reason: '', until: addDays(dayIn('UTC', new Date()), usualDays) } });
  const save = useMutation({
    mutationFn: (values: typeof form.values) =>
      call(silenceSignal, { query: filter as object, body: { key: signal.key, ...values } }),
    onSuccess: async () => {
      await forget();
      onDone();
    },
    onError: (error) => form.setErrors(refusedFields(error)),
  });
  return (
    <Modal
      opened
      onClose={onDone}
      title={t('silence.title', { name: signalName(signal, locale) })}
      centered
      closeButtonProps={{ 'aria-label': t('silence.cancel') }}
    >
      <form onSubmit={form.onSubmit((values) => save.mutate(values))}>
        <Stack>
          <Text size="sm">{t('silence.rule')}</Text>
          <Textarea
            label={t('silence.reason')}
            required
            minLength={3}
            maxLength={500}
            autosize
            minRows={2}
            {...form.getInputProps('reason')}
          />
          <TextInput type="date" label={t('silence.until')} required {...form.getInputProps('until')} />
          {save.error && <ProblemNote error={save.error} />}
          <Group justify="flex-end">
            <Button variant="default" onClick={onDone}>
              {t('silence.cancel')}
            </Button>
            <Button type="submit" loading={save.isPending}>
              {t('silence.press')}
            </Button>
          </Group>
        </Stack>
      </form>
    </Modal>
  );
};
