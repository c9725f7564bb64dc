import { Button, Group, Modal, Stack, Textarea } from '@mantine/core';
import { type ReactNode, useState } from 'react';
import { useTranslation } from 'react-i18next';
import { ProblemNote } from '#web/ui/problem.tsx';

interface Props {
  title: string;
  label: string;
  pending: boolean;
  error: unknown;
  onDone: () => void;
  onText: (text: string) => void;
  optional?: boolean;
  children?: ReactNode;
}

/** Asks for the words that a step takes: a reason, what was sent, a note. */
export const AskForm = ({ title, label, pending, error, onDone, onText, optional, children }: Props) => {
  const { t } = useTranslation('complaints');
  const [text, setText] = useState('');
  const [missing, setMissing] = useState(false);
  return (
    <Modal opened onClose={onDone} title={title} closeButtonProps={{ 'aria-label': t('form.close') }}>
      <form
        noValidate
        onSubmit={(event) => {
          event.preventDefault();
          if (!optional && text.trim().length < 3) setMissing(true);
          else onText(text.trim());
        }}
      >
        <Stack>
          <Textarea
            label={label}
            required={!optional}
            autosize
            minRows={3}
            maxLength={1000}
            value={text}
            onChange={(event) => setText(event.currentTarget.value)}
            error={missing && text.trim().length < 3 ? t('form.missing') : undefined}
            data-autofocus
          />
          {children}
          {error ? <ProblemNote error={error} /> : null}
          <Group justify="flex-end">
            <Button type="submit" loading={pending}>
              {title}
            </Button>
          </Group>
        </Stack>
      </form>
    </Modal>
  );
};
