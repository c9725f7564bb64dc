import { Text } from '@mantine/core';
import { useTranslation } from 'react-i18next';
import type { EffectPlanInput, EffectProof } from '#contracts/effects.ts';
import { useFormat } from '#web/ui/language.ts';
import { ReportsLink } from '#web/ui/reports-link.tsx';
import classes from '../actions.module.css';
import { filterOf } from './scope-filter.ts';
import { useEffectText } from './use-effect-text.ts';

interface Props {
  proof: EffectProof;
  plan: EffectPlanInput;
  plantId: string;
}

/** What would count as proof, in sentences: the rate before, the promise, the data it takes and when they will be there. */
export const ProofText = ({ proof, plan, plantId }: Props) => {
  const { t } = useTranslation('actions');
  const format = useFormat();
  const text = useEffectText();
  const { needed } = proof;
  const filter = { ...filterOf(plan.scope, plantId), builtFrom: plan.before.from, builtTo: plan.before.to };
  return (
    <Text component="div" size="sm" maw="75ch" mb="md" className={classes.prose}>
      <p>
        {t('proof.stated', { day: format.day(proof.statedOn) })}{' '}
        <ReportsLink filter={filter}>
          {t('proof.before', {
            count: proof.before.failures,
            period: format.period(plan.before.from, plan.before.to),
            rate: text.rate(proof.rateBefore),
          })}
        </ReportsLink>{' '}
        {text.interval(proof.rateBefore.interval)}{' '}
        {t('proof.promise', { reduction: format.percent(plan.reduction, 0), day: format.day(plan.cleanPoint) })}
      </p>
      <p>
        {needed.value === null
          ? t(
              `proof.reason.${needed.reason === 'no_production' || needed.reason === 'no_reports' ? needed.reason : 'too_few'}`,
            )
          : t('proof.needed', {
              exposure: format.count(needed.value),
              failures: format.count(needed.mostFailures),
              power: format.percent(needed.power, 0),
            })}{' '}
        {needed.value !== null &&
          (proof.supplyOn
            ? t('proof.supplied', { day: format.day(proof.supplyOn), perDay: format.count(proof.perDay) })
            : t('proof.neverSupplied'))}{' '}
        {proof.wider && t('proof.wider')}{' '}
        {proof.maturity &&
          proof.maturity[0]! < 0.995 &&
          t('proof.late', { share: format.percent(proof.maturity[0]!, 0) })}
      </p>
    </Text>
  );
};
