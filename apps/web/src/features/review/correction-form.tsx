import { Button, Group, Modal, Textarea } from '@mantine/core';
import { useDisclosure } from '@mantine/hooks';
import { useMutation } from '@tanstack/react-query';
import { useNavigate } from '@tanstack/react-router';
import { type FormEvent, useState } from 'react';
import { useTranslation } from 'react-i18next';
import { uuidv7 } from 'uuidv7';
import { correctReview, type Review } from '#contracts/review.ts';
import { call } from '#web/ui/http.ts';
import { ProblemNote } from '#web/ui/problem.tsx';
import { useForgetReviews } from './queries.ts';

/** A closed review stays; what was wrong with it is said, and a new edition begins. */
export const CorrectionForm = ({ review }: { review: Review }) => {
  const { t } = useTranslation('review');
  const { t: ui } = useTranslation('ui');
  const [open, { open: show, close }] = useDisclosure();
  const [reason, setReason] = useState('');
  const forget = useForgetReviews();
  const navigate = useNavigate();
  const correct = useMutation({
    mutationFn: () =>
      call(correctReview, { params: { id: review.id ?? '' }, body: { reason }, idempotencyKey: uuidv7() }),
    onSuccess: async (edition) => {
      close();
      await forget();
      await navigate({ to: '/review/$id', params: { id: edition.id ?? '' } });
    },
  });
  const send = (event: FormEvent) => {
    event.preventDefault();
    correct.mutate();
  };
  return (
    <>
      <Button variant="default" onClick={show}>
        {t('correct')}
      </Button>
      <Modal
        opened={open}
        onClose={close}
        title={t('correct')}
        centered
        closeButtonProps={{ 'aria-label': ui('close') }}
      >
        <form onSubmit={send}>
          <Textarea
            label={t('correctReason')}
            description={t('correctHelp')}
            value={reason}
            onChange={(event) => setReason(event.currentTarget.value)}
            required
            minLength={3}
            autosize
            minRows={2}
            data-autofocus
          />
          {correct.error && <ProblemNote error={correct.error} />}
          <Group justify="flex-end" mt="md">
            <Button variant="default" onClick={close}>
              {ui('cancel')}
            </Button>
            <Button type="submit" loading={correct.isPending}>
              {t('correctBegin')}
            </Button>
          </Group>
        </form>
      </Modal>
    </>
  );
};
