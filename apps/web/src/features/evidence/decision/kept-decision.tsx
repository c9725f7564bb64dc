import { useTranslation } from 'react-i18next';
import type { KeptDecision as Kept } from '#contracts/evidence.ts';
import { useFormat, useTerms } from '#web/ui/language.ts';
import { useFindingTerms } from '../use-findings.ts';

/** What was decided, what the suggestion had said before, and from which findings. */
export const KeptDecision = ({ decision }: { decision: Kept }) => {
  const { t } = useTranslation('evidence');
  const format = useFormat();
  const terms = useTerms();
  const findings = useFindingTerms();
  const { cause, suggested, probability, by, at, reason, modelVersion } = decision;
  const told = decision.findings.filter(({ answer }) => answer !== 'could_not_tell');
  return (
    <>
      <p>
        <strong>{t('decision.kept', { cause: terms.cause[cause], name: by, when: format.instant(at) })}</strong>
      </p>
      {reason && <p>{t('decision.because', { reason })}</p>}
      <p>
        {t('decision.said', {
          suggested: terms.cause[suggested],
          cause: terms.cause[cause],
          chance: format.chance(probability),
          version: format.count(modelVersion),
        })}
      </p>
      {told.length > 0 && (
        <details>
          <summary style={{ minHeight: '2.75rem', paddingBlock: '0.6rem', cursor: 'pointer' }}>
            {t('decision.inputs', { count: told.length })}
          </summary>
          <ul>
            {told.map(({ code, answer }) => (
              <li key={code}>
                {findings[code].name}: {t(`answer.${answer}`)}
              </li>
            ))}
          </ul>
        </details>
      )}
    </>
  );
};
