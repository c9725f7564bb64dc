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

interface Words {
  /** What happened. */
  title: string;
  /** What to do about it: our words where the code says all, else the API's, which name the case. */
  text: string;
  /** The API speaks English; said where the person reads another language. */
  foreign: boolean;
}

const useProblemWords = (): ((error: unknown) => Words) => {
  const { t, i18n } = useTranslation('ui');
  return (error) => {
    const title: string = `problem.title.${codeOf(error)}`;
    const text: string = `problem.text.${codeOf(error)}`;
    const known = i18n.exists(text, { ns: 'ui' });
    const detail = error instanceof Error ? error.message : String(error);
    return {
      title: i18n.exists(title, { ns: 'ui' }) ? t(title as 'problem.title.unreachable') : t('problem.heading'),
      text: known ? t(text as 'problem.text.unreachable') : detail,
      foreign: !known && i18n.language !== 'en',
    };
  };
};

export const ProblemNote = ({ error, onRetry }: { error: unknown; onRetry?: () => void }) => {
  const { t } = useTranslation('ui');
  const { title, text, foreign } = useProblemWords()(error);
  const errors = error instanceof ProblemError ? (error.problem.errors ?? []) : [];
  return (
    <Alert role="alert" my="sm" color="red.9" variant="outline" icon={<IconAlertTriangle aria-hidden />} title={title}>
      {foreign && <Text size="sm">{t('problem.inEnglish')}</Text>}
      <Text size="sm" lang={foreign ? 'en' : undefined}>
        {text}
      </Text>
      {errors.length > 0 && (
        <List size="sm" mt="xs" aria-label={t('problem.fields')}>
          {errors.map((field) => (
            <List.Item key={`${field.path}:${field.message}`}>
              <strong>{field.path}</strong>: <span lang="en">{field.message}</span>
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
