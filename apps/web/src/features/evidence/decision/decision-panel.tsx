import { Button, Group } from '@mantine/core';
import { useState } from 'react';
import { useTranslation } from 'react-i18next';
import type { Evidence } from '#contracts/evidence.ts';
import type { Report } from '#contracts/failures.ts';
import type { Cause } from '#contracts/taxonomy.ts';
import { useTerms } from '#web/ui/language.ts';
import { DecisionForm } from './decision-form.tsx';
import { KeptDecision } from './kept-decision.tsx';

interface Props {
  report: Report;
  evidence: Evidence;
  mayDecide: boolean;
}

/** A person confirms the suggestion or decides otherwise. */
export const DecisionPanel = ({ report, evidence, mayDecide }: Props) => {
  const { t } = useTranslation('evidence');
  const terms = useTerms();
  const [preset, setPreset] = useState<{ cause: Cause | null }>();
  const lead = evidence.suggestion.causes[0]?.cause;
  if (!lead || (!mayDecide && !evidence.decision)) return null;
  return (
    <section aria-labelledby="decision">
      <h3 id="decision">{t('decision.title')}</h3>
      {evidence.decision && <KeptDecision decision={evidence.decision} />}
      {mayDecide &&
        (preset ? (
          <DecisionForm
            report={report}
            evidence={evidence}
            preset={preset.cause}
            lead={lead}
            onDone={() => setPreset(undefined)}
          />
        ) : (
          <Group mt="xs" className="no-print">
            {evidence.decision ? (
              <Button
                size="lg"
                variant="default"
                onClick={() => setPreset({ cause: evidence.decision?.cause ?? null })}
              >
                {t('decision.again')}
              </Button>
            ) : (
              <>
                <Button
                  size="lg"
                  variant={evidence.suggestion.model.muted ? 'default' : 'filled'}
                  onClick={() => setPreset({ cause: lead })}
                >
                  {t('decision.confirm', { cause: terms.cause[lead] })}
                </Button>
                <Button size="lg" variant="default" onClick={() => setPreset({ cause: null })}>
                  {t('decision.otherwise')}
                </Button>
              </>
            )}
          </Group>
        ))}
    </section>
  );
};
