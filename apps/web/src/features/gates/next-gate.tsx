import { useTranslation } from 'react-i18next';
import type { Gates } from '#contracts/gates.ts';
import { useFormat, useTerms } from '#web/ui/language.ts';
import classes from './gates.module.css';

/** The gate where the next money should go, or that the data do not say which. */
export const NextGate = ({ data: { next, gates } }: { data: Gates }) => {
  const { t } = useTranslation('gates');
  const format = useFormat();
  const terms = useTerms();
  if (next.candidates.length === 0) return null;
  const chance = (stage: Gates['next']['candidates'][number]) =>
    format.drawn(gates.find((gate) => gate.stage === stage)?.probabilityBest ?? 0);
  const named = next.candidates.map((stage) => `${terms.stage[stage]} (${chance(stage)})`);
  const by = next.perMoney ? 'money' : 'point';
  return (
    <section className={classes.next} aria-label={t('next.label')}>
      <strong>
        {next.stage
          ? t(`next.clear.${by}`, { stage: terms.stage[next.stage], chance: chance(next.stage) })
          : t(`next.open.${by}`, { stages: format.list(named) })}
      </strong>
      {!next.perMoney && <p>{t('next.noCost')}</p>}
    </section>
  );
};
