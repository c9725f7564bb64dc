import { useTranslation } from 'react-i18next';
import type { ForceDetail } from '#contracts/force.ts';
import { ChartFigure } from '#web/ui/chart/chart-figure.tsx';
import { EstimateText } from '#web/ui/estimate-text.tsx';
import { useFormat, useTerms } from '#web/ui/language.ts';
import { Stat, Stats } from '#web/ui/stat.tsx';
import { BelowText } from './below-text.tsx';
import classes from './force.module.css';
import { runConfig } from './run-config.ts';
import { ToolTable } from './tool-table.tsx';
import { Meaning, Verdict } from './verdict.tsx';
import { pText } from './words.ts';

interface Props {
  detail: ForceDetail;
  onTool: (toolId: string) => void;
}

/** Below this chance an order counts as not random. */
const unlikely = 0.05;

export const TerminalView = ({ detail, onTool }: Props) => {
  const { t } = useTranslation('force');
  const format = useFormat();
  const terms = useTerms();
  const { whole, runs, period, samples, leftOut, tools } = detail;
  if (!whole) return null;
  const weakTools = tools.flatMap(({ meetsMinimum, toolCode, plantCode }) =>
    meetsMinimum === false ? [`${toolCode ?? t('noTool')} (${plantCode})`] : [],
  );
  const force = (newtons: number) => `${format.significant(newtons)} N`;
  const plants = format.list([...new Set(samples.map(({ plantCode }) => plantCode))]);
  const order = !runs ? 'unknown' : runs.pFewer < unlikely ? 'fewer' : runs.pMore < unlikely ? 'more' : 'random';
  return (
    <>
      <Stats>
        <Stat
          label={t('boundLabel')}
          figure={whole.bound === null ? '–' : force(whole.bound)}
          note={<Verdict it={whole} weakTools={weakTools} />}
        />
        <Stat
          label={t('minimum')}
          figure={whole.minimumN === null ? '–' : force(whole.minimumN)}
          note={t('belowOf', { below: format.count(whole.belowInSample), values: format.count(whole.values) })}
        />
        <Stat label={t('belowMillion')} figure={<BelowText it={whole} />} />
        <Stat
          label={t('capability')}
          figure={whole.capability ? <EstimateText estimate={whole.capability} brief /> : '–'}
          note={t(whole.capability ? 'capabilityNote' : 'capabilityNone')}
        />
        <Stat
          label={t('mean')}
          figure={force(whole.mean)}
          note={t('deviation', { deviation: format.significant(whole.deviation), smallest: force(whole.smallest) })}
        />
      </Stats>
      <div className={classes.meaning}>
        <Meaning it={whole} />
      </div>
      <ChartFigure
        title={t('run.title')}
        spoken={t('run.spoken', { count: whole.values, smallest: force(whole.smallest), mean: force(whole.mean) })}
        config={runConfig(detail, {
          axis: t('run.axis', { kind: terms.forceKind[detail.kind] }),
          noTool: t('noTool'),
          otherTools: t('otherTools'),
          minimum: t('minimum'),
          bound: t('run.bound'),
          day: format.day,
          force,
        })}
        captions={{
          unit: t('run.axis', { kind: terms.forceKind[detail.kind] }),
          period: format.period(period.from, period.to),
          filter: plants,
          interval: t('run.interval'),
        }}
      />
      <div className={classes.meaning}>
        <p>
          {t(`run.${order}`, {
            runs: runs?.runs ?? 0,
            p: pText(order === 'more' ? (runs?.pMore ?? 0) : (runs?.pFewer ?? 0), format),
          })}
        </p>
        {leftOut > 0 && <p>{t('run.leftOut', { count: leftOut })}</p>}
      </div>
      {tools.length > 1 && <ToolTable tools={tools} onTool={onTool} />}
    </>
  );
};
