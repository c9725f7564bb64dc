import { useTranslation } from 'react-i18next';
import type { ForceUnit } from '#contracts/taxonomy.ts';
import { useFormat } from '#web/ui/language.ts';
import classes from './force.module.css';
import type { ReadValues } from './values.ts';

interface Props {
  read: ReadValues;
  unit: ForceUnit;
  minimum: number | '';
}

/** What was understood of the values typed or pasted, in order, so that a slip is seen before it is sent. */
export const ValuesRead = ({ read: { values, wrong }, unit, minimum }: Props) => {
  const { t } = useTranslation('force');
  const format = useFormat();
  if (wrong || values.length === 0) return null;
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  return (
    <div>
      <p role="status">
        {t('read', {
          count: values.length,
          mean: format.significant(mean),
          smallest: format.significant(Math.min(...values)),
          unit,
        })}
      </p>
      <ol className={classes.read}>
        {values.map((value, place) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: equal values differ by their place only
          <li key={place} className={minimum !== '' && value < minimum ? classes.bad : undefined}>
            {format.number(value)}
          </li>
        ))}
      </ol>
    </div>
  );
};
