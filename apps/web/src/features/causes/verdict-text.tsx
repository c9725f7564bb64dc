import { useTranslation } from 'react-i18next';
import type { Pareto, ParetoBar } from '#contracts/analyses.ts';
import { useFormat } from '#web/ui/language.ts';
import classes from './causes.module.css';
import { verdictOf } from './verdict.ts';

interface Props {
  pareto: Pareto;
  labelOf: (bar: ParetoBar) => string;
}

/** How sure the ranking is, in words. */
export const VerdictText = ({ pareto, labelOf }: Props) => {
  const { t } = useTranslation('causes');
  const format = useFormat();
  const { sure, open } = verdictOf(pareto.bars);
  if (sure.length === 0 && open.length === 0) return null;
  const names = (bars: readonly ParetoBar[]) => format.list(bars.map(labelOf));
  const chances = format.list(
    open.map((bar) => t('verdict.chance', { name: labelOf(bar), chance: format.chance(bar.topProbability ?? 0) })),
  );
  return (
    <p className={classes.verdict}>
      {sure.length > 0 && <strong>{t('verdict.sure', { count: pareto.top, names: names(sure) })} </strong>}
      {open.length > 0 && t('verdict.open', { chances })}
    </p>
  );
};
