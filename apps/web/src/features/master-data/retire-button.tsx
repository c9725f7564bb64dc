import { Button } from '@mantine/core';
import { useMutation } from '@tanstack/react-query';
import { useTranslation } from 'react-i18next';
import { ConfirmButton } from '#web/ui/confirm-button.tsx';
import { ProblemNote } from '#web/ui/problem.tsx';
import type { KindView, Row } from './kinds.ts';
import { retireRow, useForgetMasterData } from './queries.ts';
import { useMayChange } from './use-may.ts';

/** Retiring asks first and says what it means; bringing back does not. */
export const RetireButton = ({ view, row, onDone }: { view: KindView; row: Row; onDone: () => void }) => {
  const { t } = useTranslation('master-data');
  const forget = useForgetMasterData();
  const mayChange = useMayChange(view, row.plantId);
  const change = useMutation({
    mutationFn: (retired: boolean) => retireRow(view, row, retired),
    onSuccess: async () => {
      onDone();
      await forget();
    },
  });
  if (!mayChange) return <span />;
  if (row.retiredAt)
    return (
      <>
        {change.isError && <ProblemNote error={change.error} />}
        <Button variant="default" loading={change.isPending} onClick={() => change.mutate(false)}>
          {t('bringBack')}
        </Button>
      </>
    );
  return (
    <ConfirmButton
      question={t('retireQuestion')}
      confirm={t('retire')}
      onConfirm={() => change.mutateAsync(true)}
      pending={change.isPending}
      error={change.error}
    >
      {t('retire')}
    </ConfirmButton>
  );
};
