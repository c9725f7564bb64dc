import { useNavigate } from '@tanstack/react-router';
import { useTranslation } from 'react-i18next';
import type { Pareto, ParetoBar } from '#contracts/analyses.ts';
import { Cautions } from '#web/ui/cautions.tsx';
import { ChartFigure } from '#web/ui/chart/chart-figure.tsx';
import { canvasFill } from '#web/ui/chart/pattern.ts';
import { useCaptions } from '#web/ui/filter/use-captions.ts';
import type { FilterValues } from '#web/ui/filter/use-filter.ts';
import { useFormat, useTerms } from '#web/ui/language.ts';
import { MoneyNotes } from '#web/ui/money-notes.tsx';
import { barLabel } from './bar-label.ts';
import classes from './causes.module.css';
import { markOf } from './mark-of.ts';
import { paretoConfig } from './pareto-config.ts';
import { ParetoTable } from './pareto-table.tsx';
import { useFigures } from './use-figures.ts';
import { VerdictText } from './verdict-text.tsx';

interface Props {
  pareto: Pareto;
  filter: FilterValues;
  lying: boolean;
}

export const ParetoView = ({ pareto, filter, lying }: Props) => {
  const { t } = useTranslation('causes');
  const format = useFormat();
  const terms = useTerms();
  const navigate = useNavigate();
  const captions = useCaptions(pareto);
  const figures = useFigures(pareto);
  const { dimension, compared, measure, period, bars } = pareto;

  const labelOf = (bar: Pick<ParetoBar, 'key' | 'label'>) =>
    barLabel(dimension, bar, terms, { none: t('none'), several: t('several') });
  const all: FilterValues = { ...filter, ...period };
  const filterOf = ({ key }: ParetoBar): FilterValues => ({ ...all, [dimension]: [key] });

  const rest: FilterValues = {
    ...all,
    except: [...(filter.except ?? []), ...(pareto.other?.except ?? []).map((key) => `${dimension}:${key}`)],
  };

  const first = bars[0];
  const title =
    first?.share != null
      ? t('answer.share', {
          name: labelOf(first),
          share: format.percent(first.share, 0),
          measure: t(`ofAll.${measure}`),
        })
      : t('answer.rate', { name: first ? labelOf(first) : '' });
  const config = paretoConfig(pareto, {
    lying,
    fill: canvasFill,
    marks: bars.map(({ key }) => markOf(dimension, key)),
    write: figures.axis,
    writeShare: (share) => format.percent(share, 0),
    onBar: (index) => {
      const bar = bars[index];
      if (bar) void navigate({ to: '/failures', search: filterOf(bar) });
    },
    words: {
      labels: bars.map(labelOf),
      measure: figures.unit,
      cumulative: t('chart.cumulative'),
      earlier: compared ? t('chart.earlier', { period: format.period(compared.from, compared.to) }) : '',
      booked: t('measure.booked'),
      estimated: t('column.estimated'),
      other: t('otherShort'),
    },
  });

  return (
    <>
      <VerdictText pareto={pareto} labelOf={labelOf} />
      <ChartFigure
        title={title}
        spoken={`${title}. ${t('chart.spoken', { count: bars.length })}`}
        config={config}
        height={lying ? 6 + 2.6 * bars.length : 26}
        captions={{
          unit: figures.unit,
          ...captions,
          interval: t(first?.shareInterval ? 'chart.simultaneous' : 'chart.each', {
            confidence: format.percent((first?.shareInterval ?? first?.interval)?.confidence ?? 0.95, 0),
          }),
        }}
      />
      <section className={classes.table}>
        <ParetoTable
          pareto={pareto}
          caption={t('table.caption', { dimension: t(`dimension.${dimension}`), period: captions.period })}
          labelOf={labelOf}
          filterOf={filterOf}
          all={all}
          rest={rest}
        />
      </section>
      {dimension === 'cause' && bars.some(({ key }) => key === 'adhesive') && <Cautions about={['adhesive']} />}
      {dimension === 'effect' && bars.some(({ key }) => key === 'heating') && <Cautions about={['heating']} />}
      <MoneyNotes head={pareto} />
    </>
  );
};
