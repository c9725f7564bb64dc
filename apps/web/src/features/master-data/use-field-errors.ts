import { useTranslation } from 'react-i18next';
import type { z } from 'zod';
import type { KindView, Values } from './kinds.ts';
import type { messages } from './messages.en.ts';

type Issue = z.core.$ZodIssue;

/** Checks by the contract's own schema, said in the person's language. */
export const useFieldErrors = ({ resource }: KindView): ((input: Values) => Record<string, string>) => {
  const { t } = useTranslation('master-data');
  const custom = (name: string) => t(`error.own.${name as keyof typeof messages.error.own}`);
  const say = (issue: Issue, name: string, value: unknown): string => {
    if (value === '' || value === null || value === undefined) return t('error.missing');
    if (issue.code === 'too_small' && issue.origin !== 'string')
      return t('error.tooSmall', { minimum: String(issue.minimum) });
    if (issue.code === 'too_big')
      return issue.origin === 'string'
        ? t('error.tooLong', { maximum: String(issue.maximum) })
        : t('error.tooBig', { maximum: String(issue.maximum) });
    if (issue.code === 'custom' || issue.code === 'invalid_format') return custom(name);
    return t('error.notValid');
  };
  return (input) => {
    const read = resource.Input.safeParse(input);
    if (read.success) return {};
    const first = new Map<string, string>();
    for (const issue of read.error.issues) {
      const name = String(issue.path[0]);
      if (!first.has(name)) first.set(name, say(issue, name, input[name]));
    }
    return Object.fromEntries(first);
  };
};
