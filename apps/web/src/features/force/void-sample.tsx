import { Button, Group, Modal, TextInput } from '@mantine/core';
import { useDisclosure } from '@mantine/hooks';
import { useMutation } from '@tanstack/react-query';
import { useState } from 'react';
import { useTranslation } from 'react-i18next';
import { type ForceSample, voidForce } from '#contracts/force.ts';
import { call } from '#web/ui/http.ts';
import { useFormat } from '#web/ui/language.ts';
import { ProblemNote } from '#web/ui/problem.tsx';
import { useForgetForces } from './queries.ts';

/** Takes a sample out of lists and analyses, with the reason. */
export const VoidSample = ({ sample }: { sample: ForceSample }) => {
  const { t } = useTranslation('force');
  const format = useFormat();
  const forget = useForgetForces();
  const [open, { open: show, close }] = useDisclosure();
  const [reason, setReason] = useState('');
  const save = useMutation({
    mutationFn: () => call(voidForce, { params: { id: sample.id }, body: { reason }, version: sample.version }),
    onSuccess: async () => {
      close();
      await forget();
    },
  });
  const title = t('void.title', { day: format.day(sample.day) });
  return (
    <>
      <Button variant="subtle" size="compact-md" onClick={show} aria-label={title}>
        {t('void.action')}
      </Button>
      <Modal opened={open} onClose={close} title={title} centered closeButtonProps={{ 'aria-label': t('close') }}>
        <form
          onSubmit={(event) => {
            event.preventDefault();
            if (reason.trim()) save.mutate();
          }}
        >
          <TextInput
            label={t('void.reason')}
            value={reason}
            onChange={(event) => setReason(event.currentTarget.value)}
            required
            data-autofocus
          />
          {save.error && <ProblemNote error={save.error} />}
          <Group justify="flex-end" mt="md">
            <Button variant="default" onClick={close}>
              {t('close')}
            </Button>
            <Button type="submit" color="red.9" loading={save.isPending} disabled={!reason.trim()}>
              {t('void.action')}
            </Button>
          </Group>
        </form>
      </Modal>
    </>
  );
};
