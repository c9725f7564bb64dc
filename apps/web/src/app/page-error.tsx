import { Container } from '@mantine/core';
import { type ErrorComponentProps, useRouter } from '@tanstack/react-router';
import { ProblemNote } from '#web/ui/problem.tsx';

/** What a page shows when it could not be opened at all. */
export const PageError = ({ error, reset }: ErrorComponentProps) => {
  const router = useRouter();
  const again = () => {
    reset();
    void router.invalidate();
  };
  return (
    <Container component="main" size="sm" py="xl">
      <ProblemNote error={error} onRetry={again} />
    </Container>
  );
};
