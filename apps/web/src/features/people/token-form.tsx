import { Button, CopyButton, Group, Modal, Stack, Text, TextInput } from '@mantine/core';
import { useForm } from '@mantine/form';
import { useMutation } from '@tanstack/react-query';
import { useTranslation } from 'react-i18next';
import { createToken, type Grant } from '#contracts/people.ts';
import { call } from '#web/ui/http.ts';
import { ProblemNote } from '#web/ui/problem.tsx';
import { GrantsField } from './grants-field.tsx';
import classes from './people.module.css';
import { useForgetPeople } from './queries.ts';

/** The end of the chosen day where the browser stands. */
const endOf = (day: string): string => new Date(new Date(`${day}T00:00:00`).getTime() + 86_400_000).toISOString();

export const TokenForm = ({ onDone }: { onDone: () => void }) => {
  const { t } = useTranslation('people');
  const forget = useForgetPeople();
  const form = useForm({
    initialValues: { name: '', grants: [{ role: 'inspector', plantId: null }] as Grant[], expires: '' },
    validate: {
      name: (name) => (name.trim() === '' ? t('error.missing') : null),
      grants: (grants) => (grants.length === 0 ? t('error.noRole') : null),
    },
  });
  const make = useMutation({
    mutationFn: ({ name, grants, expires }: typeof form.values) =>
      call(createToken, { body: { name, grants, expiresAt: expires === '' ? null : endOf(expires) } }),
    onSuccess: forget,
  });

  return (
    <Modal
      opened
      onClose={onDone}
      title={t('tokens.make')}
      size="lg"
      closeOnClickOutside={!make.data}
      closeButtonProps={{ 'aria-label': t('close') }}
    >
      {make.data ? (
        <Secret secret={make.data.secret} onDone={onDone} />
      ) : (
        <form onSubmit={form.onSubmit((values) => make.mutate(values))} noValidate>
          <Stack>
            <TextInput
              label={t('tokens.name')}
              description={t('tokens.nameHelp')}
              required
              maxLength={120}
              autoComplete="off"
              {...form.getInputProps('name')}
            />
            <GrantsField grants={form.values.grants} onChange={(grants) => form.setFieldValue('grants', grants)} />
            {form.errors.grants && (
              <Text size="sm" role="alert" c="red.9">
                {form.errors.grants}
              </Text>
            )}
            <TextInput
              type="date"
              label={t('tokens.lastDay')}
              description={t('tokens.lastDayHelp')}
              {...form.getInputProps('expires')}
            />
            {make.isError && <ProblemNote error={make.error} />}
            <Group justify="flex-end">
              <Button type="submit" loading={make.isPending}>
                {t('tokens.make')}
              </Button>
            </Group>
          </Stack>
        </form>
      )}
    </Modal>
  );
};

const Secret = ({ secret, onDone }: { secret: string; onDone: () => void }) => {
  const { t } = useTranslation('people');
  return (
    <Stack>
      <Text fw={600}>{t('tokens.once')}</Text>
      <output className={classes.secret} aria-label={t('tokens.secret')}>
        {secret}
      </output>
      <Text size="sm">{t('tokens.use')}</Text>
      <Group justify="flex-end">
        <CopyButton value={secret}>
          {({ copied, copy }) => (
            <Button onClick={copy} aria-live="polite">
              {copied ? t('tokens.copied') : t('tokens.copy')}
            </Button>
          )}
        </CopyButton>
        <Button variant="default" onClick={onDone}>
          {t('tokens.kept')}
        </Button>
      </Group>
    </Stack>
  );
};
