import { NumberInput, Select } from '@mantine/core';
import { useDebouncedValue } from '@mantine/hooks';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { useTranslation } from 'react-i18next';
import { acceptanceLimits, type Containment, inspectionLevels } from '#contracts/containment.ts';
import { useFormat } from '#web/ui/language.ts';
import { PlainWords } from '#web/ui/plain-words.tsx';
import classes from './containment.module.css';
import { planQuery } from './queries.ts';

/** Where not every part is sorted: a plan by the standard, and what a clean sample does and does not show. */
export const PlanSection = ({ containment }: { containment: Containment }) => {
  const { t } = useTranslation('containment');
  const format = useFormat();
  const [lot, setLot] = useState<number | string>(containment.population.suspect ?? 1000);
  const [limit, setLimit] = useState<(typeof acceptanceLimits)[number]>('0.65');
  const [level, setLevel] = useState<(typeof inspectionLevels)[number]>('II');
  const [asked] = useDebouncedValue(lot, 300);
  const valid = Number(asked) >= 2;
  const plan = useQuery(planQuery(valid ? { lot: Number(asked), limit, level } : null)).data;
  return (
    <section className={`${classes.section} no-print`} aria-label={t('plan.title')}>
      <h2>{t('plan.title')}</h2>
      <div className={classes.form}>
        <NumberInput label={t('plan.lot')} min={2} allowDecimal={false} hideControls value={lot} onChange={setLot} />
        <Select
          label={t('plan.limit')}
          allowDeselect={false}
          data={[...acceptanceLimits]}
          value={limit}
          onChange={(value) => setLimit(value as typeof limit)}
        />
        <Select
          label={t('plan.level')}
          allowDeselect={false}
          data={[...inspectionLevels]}
          value={level}
          onChange={(value) => setLevel(value as typeof level)}
        />
      </div>
      {plan && (
        <>
          <p>
            <strong>
              {plan.everyItem
                ? t('plan.every')
                : t('plan.take', {
                    count: plan.sampleSize,
                    size: format.count(plan.sampleSize),
                    accept: plan.accept,
                    reject: plan.reject,
                    letter: plan.planLetter,
                  })}
            </strong>
          </p>
          {!plan.everyItem && (
            <>
              <p>
                {t('plan.zero', {
                  items: format.count(plan.afterZero.items ?? 0),
                  share: format.percent(plan.afterZero.fraction),
                })}
              </p>
              <ul className={classes.list}>
                {plan.toShow.map(({ fraction, sampleSize }, place) => (
                  <li key={fraction}>
                    {t('plan.row', {
                      share: format.percent(fraction),
                      passes: format.percent(plan.passes[place]?.probability ?? 1),
                      size: format.count(sampleSize),
                    })}
                  </li>
                ))}
              </ul>
            </>
          )}
          <PlainWords>{t('plan.meaning')}</PlainWords>
        </>
      )}
    </section>
  );
};
