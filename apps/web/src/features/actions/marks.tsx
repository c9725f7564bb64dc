import { Badge } from '@mantine/core';
import { useTranslation } from 'react-i18next';
import type { ActionRow } from '#contracts/actions.ts';
import type { EffectVerdict } from '#contracts/effects.ts';
import { useActionTerms } from './use-terms.ts';

const signs: Record<EffectVerdict, string> = { held: '✓', not_shown_yet: '…', did_not_hold: '✗' };

/** The state in words, and what is pressing about it; never by colour alone. */
export const StateMark = ({ action }: { action: Pick<ActionRow, 'state' | 'daysOverdue' | 'reopened'> }) => {
  const { t } = useTranslation('actions');
  const terms = useActionTerms();
  return (
    <>
      {terms.state[action.state]}
      {action.daysOverdue > 0 && (
        <>
          {' '}
          <Badge color="red.9" variant="outline" size="md" tt="none">
            {t('overdueBy', { count: action.daysOverdue })}
          </Badge>
        </>
      )}
      {action.reopened > 0 && (
        <>
          {' '}
          <Badge variant="default" size="md" tt="none">
            {t('reopened', { count: action.reopened })}
          </Badge>
        </>
      )}
    </>
  );
};

export const VerdictMark = ({ verdict }: { verdict: EffectVerdict | null }) => {
  const terms = useActionTerms();
  if (verdict === null) return null;
  return (
    <Badge
      variant="outline"
      color={verdict === 'did_not_hold' ? 'red.9' : verdict === 'held' ? 'green.9' : 'dark'}
      size="md"
      tt="none"
      miw="max-content"
    >
      {signs[verdict]} {terms.verdict[verdict]}
    </Badge>
  );
};
