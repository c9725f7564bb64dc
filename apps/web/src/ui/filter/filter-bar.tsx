/** What the page is about, as a sentence whose underlined words can be changed. Prints as plain words. */
import { Button } from '@mantine/core';
import { useTranslation } from 'react-i18next';
import type { Period } from '#web/ui/period.ts';
import { AddFilter } from './add-filter.tsx';
import { Chip } from './chip.tsx';
import { CurrencyPicker } from './currency-picker.tsx';
import { fieldNames } from './fields.ts';
import classes from './filter-bar.module.css';
import { PeriodPicker } from './period-picker.tsx';
import { PlantPicker } from './plant-picker.tsx';
import { useFilter } from './use-filter.ts';

interface Props {
  /** The period the answer is about, where the API chose it because the address names none. */
  period?: Period;
  /** Analyses always have a period: where none is chosen, the last 13 full weeks. Lists have none. */
  always?: boolean;
  /** The page chooses its period itself. */
  timeless?: boolean;
  /** The currency of the answer, where it holds money. */
  currency?: string;
}

export const FilterBar = ({ period, always, timeless, currency }: Props) => {
  const { t } = useTranslation('ui');
  const [filter, change] = useFilter();
  const chosen = fieldNames.filter((name) => filter[name] !== undefined);
  const clear = () => change(Object.fromEntries(chosen.map((name) => [name, undefined])));

  return (
    <section className={classes.bar} aria-label={t('filter.label')}>
      {!timeless && <PeriodPicker shown={period} always={always} />}
      <PlantPicker />
      {currency && <CurrencyPicker shown={currency} />}
      {chosen.map((name) => (
        <Chip key={name} name={name} />
      ))}
      <AddFilter />
      {chosen.length > 1 && (
        <Button variant="subtle" size="compact-sm" className="no-print" onClick={clear}>
          {t('filter.clear')}
        </Button>
      )}
    </section>
  );
};
