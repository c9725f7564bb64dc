import { Button } from '@mantine/core';
import { useTranslation } from 'react-i18next';
import { ProblemError } from '#web/ui/http.ts';
import { ProblemNote } from '#web/ui/problem.tsx';

/** A refusal; after a lost race also the way to the present version. */
export const SaveProblem = ({ error, onReload }: { error: unknown; onReload: () => void }) => {
  const { t } = useTranslation('people');
  if (!error) return null;
  const lost = error instanceof ProblemError && error.problem.code === 'changed_meanwhile';
  return (
    <>
      <ProblemNote error={error} />
      {lost && (
        <Button variant="default" onClick={onReload}>
          {t('loadPresent')}
        </Button>
      )}
    </>
  );
};
