import { Anchor, Text, Title } from '@mantine/core';
import { Link } from '@tanstack/react-router';
import { useTranslation } from 'react-i18next';
import type { Effect } from '#contracts/effects.ts';
import { ChartFigure } from '#web/ui/chart/chart-figure.tsx';
import { useFormat } from '#web/ui/language.ts';
import { PlainWords } from '#web/ui/plain-words.tsx';
import { ReportsLink } from '#web/ui/reports-link.tsx';
import { Stat, Stats } from '#web/ui/stat.tsx';
import { VerdictMark } from '../marks.tsx';
import { effectConfig } from './effect-config.ts';
import { LooksTable, WeeksTable } from './effect-tables.tsx';
import { ProofText } from './proof-text.tsx';
import { filterOf } from './scope-filter.ts';
import { useEffectText } from './use-effect-text.ts';

interface Props {
  effect: Effect;
  plantId: string;
}

/** What was stated beforehand, what the data say since, and how far that may be relied on. */
export const EffectView = ({ effect, plantId }: Props) => {
  const { t } = useTranslation('actions');
  const format = useFormat();
  const text = useEffectText();
  const { plan, planned, before, after, ratio, evidence } = effect;
  const filter = filterOf(plan.scope, plantId);
  const links = {
    before: { ...filter, builtFrom: plan.before.from, builtTo: plan.before.to },
    after: { ...filter, builtFrom: plan.cleanPoint },
  };
  const unit = t('effect.unit');
  return (
    <>
      <p>
        <VerdictMark verdict={effect.verdict} /> {text.verdict(effect)}
      </p>
      <ProofText proof={planned} plan={plan} plantId={plantId} />
      <Stats>
        <Stat
          label={t('effect.before')}
          figure={text.rate(before.rate)}
          interval={text.interval(before.rate.interval)}
          link={<ReportsLink filter={links.before}>{t('effect.reports', { count: before.failures })}</ReportsLink>}
        />
        <Stat
          label={t('effect.after')}
          figure={text.rate(after.rate)}
          interval={text.interval(after.rate.interval)}
          link={<ReportsLink filter={links.after}>{t('effect.reports', { count: after.failures })}</ReportsLink>}
        />
        <Stat
          label={t('effect.ratio')}
          figure={ratio.value === null ? '–' : format.significant(ratio.value)}
          interval={ratio.overAllLooks && t('effect.allLooks', { interval: text.limits(ratio.overAllLooks) })}
          note={ratio.interval && t('effect.oneLook', { interval: text.limits(ratio.interval) })}
        />
        <Stat
          label={t('effect.evidence')}
          figure={evidence ? text.evidence(evidence.ofReduction) : '–'}
          note={
            evidence &&
            t('effect.evidenceNote', {
              against: text.evidence(evidence.againstPromise),
              needed: format.count(evidence.needed),
              p: ratio.p === null ? '–' : text.p(ratio.p),
            })
          }
        />
      </Stats>
      <ChartFigure
        title={t('effect.chart')}
        spoken={text.verdict(effect)}
        config={effectConfig(
          effect,
          {
            weeks: effect.weeks.map(({ from }) => format.week(from)),
            rate: unit,
            before: t('effect.before'),
            after: t('effect.after'),
            cleanPoint: t('effect.cleanPointOn', { day: format.day(plan.cleanPoint) }),
          },
          format.significant,
        )}
        captions={{ unit, period: t('effect.byWeek', { from: format.day(plan.before.from) }) }}
        table={<WeeksTable weeks={effect.weeks} filter={filter} />}
      />
      <PlainWords>
        {t('effect.means')} {t('effect.bound')}{' '}
        {t(effect.endedAtFailure ? 'effect.boundStrict' : 'effect.boundChecked')} {t('effect.distrust')}
      </PlainWords>
      <Recurrences effect={effect} />
      <LooksTable looks={effect.looks} kept={effect.kept} />
    </>
  );
};

const Recurrences = ({ effect }: { effect: Effect }) => {
  const { t } = useTranslation('actions');
  const format = useFormat();
  if (effect.recurrences.length === 0) return <Text size="sm">{t('recurrence.none')}</Text>;
  const shown = effect.recurrences.slice(-20).toReversed();
  return (
    <section aria-label={t('recurrence.title')}>
      <Title order={3}>{t('recurrence.title')}</Title>
      <Text size="sm">{t(`recurrence.${effect.plan.onRecurrence}`, { count: effect.recurrences.length })}</Text>
      <ul>
        {shown.map((one) => (
          <li key={one.failureId}>
            <Anchor
              underline="always"
              inherit
              renderRoot={(props) => <Link {...props} to="/failures/$id" params={{ id: one.failureId }} />}
            >
              {one.number}
            </Anchor>{' '}
            {t(one.certain ? 'recurrence.certain' : 'recurrence.possible', {
              day: format.day(one.builtOn ?? one.foundOn),
            })}
            {one.reopened && ` – ${t('recurrence.reopened')}`}
          </li>
        ))}
      </ul>
    </section>
  );
};
