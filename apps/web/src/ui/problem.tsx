/** A refusal in the person's language: by its code where we have words for it, else as the API put it. */
import { Alert, Button, List, Text } from '@mantine/core';
import { IconAlertTriangle } from '@tabler/icons-react';
import { useTranslation } from 'react-i18next';
import { ZodError } from 'zod';
import { ProblemError } from './http.ts';

const codeOf = (error: unknown): string => {
  if (error instanceof ZodError) return 'outside_contract';
  return error instanceof ProblemError ? error.problem.code : '';
};

/** What to do about it: our words where the code says all, else the API's, which name the case. */
export const useProblemText = (): ((error: unknown) => string) => {
  const { t, i18n } = useTranslation('ui');
  return (error) => {
    const key: string = `problem.text.${codeOf(error)}`;
    if (i18n.exists(key, { ns: 'ui' })) return t(key as 'problem.text.unreachable');
    return error instanceof Error ? error.message : String(error);
  };
};

const useProblemTitle = (): ((error: unknown) => string) => {
  const { t, i18n } = useTranslation('ui');
  return (error) => {
    const key: string = `problem.title.${codeOf(error)}`;
    return i18n.exists(key, { ns: 'ui' }) ? t(key as 'problem.title.unreachable') : t('problem.heading');
  };
};

export const ProblemNote = ({ error, onRetry }: { error: unknown; onRetry?: () => void }) => {
  const { t } = useTranslation('ui');
  const text = useProblemText();
  const title = useProblemTitle();
  const errors = error instanceof ProblemError ? (error.problem.errors ?? []) : [];
  return (
    <Alert role="alert" color="red.9" variant="outline" icon={<IconAlertTriangle aria-hidden />} title={title(error)}>
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
