/** A refusal in the person's language: by its code where we have words for it, else as the API put it. */
import { Alert, Button, List, Text } from '@mantine/core';
import { IconAlertTriangle } from '@tabler/icons-react';
import { useTranslation } from 'react-i18next';
import { ZodError } from 'zod';
import { ProblemError } from './http.ts';

export const useProblemText = (): ((error: unknown) => string) => {
  const { t, i18n } = useTranslation('ui');
  return (error) => {
    if (error instanceof ZodError) return t('problem.outside_contract');
    if (!(error instanceof ProblemError)) return error instanceof Error ? error.message : String(error);
    const key = `problem.${error.problem.code}`;
    return i18n.exists(key, { ns: 'ui' }) ? t(key as 'problem.unreachable') : error.problem.detail;
  };
};

export const ProblemNote = ({ error, onRetry }: { error: unknown; onRetry?: () => void }) => {
  const { t } = useTranslation('ui');
  const text = useProblemText();
  const errors = error instanceof ProblemError ? (error.problem.errors ?? []) : [];
  return (
    <Alert
      role="alert"
      color="red.9"
      variant="outline"
      icon={<IconAlertTriangle aria-hidden />}
      title={t('problem.heading')}
    >
      <Text size="sm">{text(error)}</Text>
      {errors.length > 0 && (
        <List size="sm" mt="xs" aria-label={t('problem.fields')}>
          {errors.map((field) => (
            <List.Item key={`${field.path}:${field.message}`}>
              <strong>{field.path}</strong>: {field.message}
            </List.Item>
          ))}
        </List>
      )}
      {onRetry && (
        <Button variant="default" size="compact-sm" mt="sm" onClick={onRetry}>
          {t('problem.retry')}
        </Button>
      )}
    </Alert>
  );
};
