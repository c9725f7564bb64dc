import { Button, type ButtonProps, Group, Modal, Text } from '@mantine/core';
import { useDisclosure } from '@mantine/hooks';
import type { ReactNode } from 'react';
import { useTranslation } from 'react-i18next';
import { ProblemNote } from './problem.tsx';

interface Props extends ButtonProps {
  children: ReactNode;
  /** What happens if confirmed, in a sentence. */
  question: string;
  confirm: string;
  onConfirm: () => Promise<unknown>;
  pending?: boolean;
  error?: unknown;
}

/** A button for what cannot be undone by a second press: says what will happen and asks. */
export const ConfirmButton = ({ children, question, confirm, onConfirm, pending, error, ...button }: Props) => {
  const { t } = useTranslation('ui');
  const [open, { open: show, close }] = useDisclosure();
  const go = () => void onConfirm().then(close, () => undefined);
  return (
    <>
      <Button variant="default" {...button} onClick={show}>
        {children}
      </Button>
      <Modal opened={open} onClose={close} title={confirm} centered closeButtonProps={{ 'aria-label': t('close') }}>
        <Text mb="md">{question}</Text>
        {error !== undefined && error !== null && <ProblemNote error={error} />}
        <Group justify="flex-end" mt="md">
          <Button variant="default" onClick={close} data-autofocus>
            {t('cancel')}
          </Button>
          <Button color="red.9" onClick={go} loading={pending}>
            {confirm}
          </Button>
        </Group>
      </Modal>
    </>
  );
};
