import { useTranslation } from 'react-i18next';
import type { ForceJudgement } from '#contracts/force.ts';
import { useFormat } from '#web/ui/language.ts';
import classes from './force.module.css';
import { pIs } from './words.ts';

/** Whether the terminals hold their minimum, in words and by a mark that is not colour alone. */
export const Verdict = ({ it, weakTools = [] }: { it: ForceJudgement; weakTools?: readonly string[] }) => {
  const { t } = useTranslation('force');
  const format = useFormat();
  if (it.notJudged) return <span className={classes.quiet}>{t(`notJudged.${it.notJudged}`)}</span>;
  if (it.meetsMinimum !== false && weakTools.length > 0)
    return <span className={classes.bad}>✗ {t('verdict.tool', { tools: format.list(weakTools) })}</span>;
  if (it.meetsMinimum === null) return <span>{t('verdict.open')}</span>;
  return (
    <span className={it.meetsMinimum ? classes.good : classes.bad}>
      {it.meetsMinimum ? `✓ ${t('verdict.meets')}` : `✗ ${t('verdict.fails')}`}
    </span>
  );
};

/** What the bound rests on, what it means, and when not to trust it. */
export const Meaning = ({ it }: { it: ForceJudgement }) => {
  const { t } = useTranslation('force');
  const format = useFormat();
  if (it.notJudged) return <p>{t(`notJudgedText.${it.notJudged}`)}</p>;
  const p = it.normality ? pIs(it.normality.p, format) : '';
  return (
    <>
      {it.bound !== null && <p>{t('meaning.bound', { bound: format.significant(it.bound) })}</p>}
      {it.method === 'order_statistic' ? (
        <p>
          {t(it.bound === null ? 'method.order_short' : 'method.order_statistic', {
            p,
            needed: it.needed,
            count: it.values,
          })}
        </p>
      ) : (
        <p>{t(`method.${it.method ?? 'normal'}`, { p })}</p>
      )}
      {it.otherMinimums.length > 0 && (
        <p>
          {t('meaning.minimums', {
            minimum: format.significant(it.minimumN ?? 0),
            others: format.list(it.otherMinimums.map((other) => format.significant(other))),
          })}
        </p>
      )}
      <p className={classes.quiet}>{t('meaning.trust')}</p>
    </>
  );
};
