import { Button, Group, Modal, Text, Textarea } from '@mantine/core';
import { useDisclosure } from '@mantine/hooks';
import { useState } from 'react';
import { useTranslation } from 'react-i18next';
import { type Report, voidReport } from '#contracts/failures.ts';
import { call } from '#web/ui/http.ts';
import { ProblemNote } from '#web/ui/problem.tsx';
import { useReportWrite } from '../queries.ts';

/** Takes a mistaken report out of every count; asks why. */
export const VoidReport = ({ report }: { report: Report }) => {
  const { t } = useTranslation('failures');
  const [open, { open: show, close }] = useDisclosure();
  const [reason, setReason] = useState('');
  const save = useReportWrite(() =>
    call(voidReport, { params: { id: report.id }, body: { reason }, version: report.version }),
  );
  return (
    <>
      <Button variant="default" className="no-print" onClick={show}>
        {t('void.title')}
      </Button>
      <Modal
        opened={open}
        onClose={close}
        title={t('void.title')}
        centered
        closeButtonProps={{ 'aria-label': t('form.cancel') }}
      >
        <form
          onSubmit={(event) => {
            event.preventDefault();
            save.mutate(undefined, { onSuccess: close });
          }}
        >
          <Text mb="sm">{t('void.question', { number: report.number })}</Text>
          <Textarea
            label={t('void.reason')}
            required
            minLength={3}
            maxLength={500}
            autosize
            minRows={2}
            value={reason}
            onChange={(event) => setReason(event.currentTarget.value)}
            data-autofocus
          />
          {save.error && <ProblemNote error={save.error} />}
          <Group justify="flex-end" mt="md">
            <Button variant="default" onClick={close}>
              {t('form.cancel')}
            </Button>
            <Button type="submit" color="red.9" loading={save.isPending}>
              {t('void.confirm')}
            </Button>
          </Group>
        </form>
      </Modal>
    </>
  );
};
