import { useTranslation } from 'react-i18next';
import type { TrackRecord } from '#contracts/evidence.ts';
import { ink } from '#web/app/theme.ts';
import { Figure } from '#web/ui/chart/figure.tsx';
import { EstimateText } from '#web/ui/estimate-text.tsx';
import { useFormat } from '#web/ui/language.ts';
import { DataTable } from '#web/ui/table/data-table.tsx';
import classes from './record.module.css';

type Bin = TrackRecord['calibration'][number];
const left = 56;
const side = 320;
const top = 12;
const at = (share: number) => left + share * side;
const up = (share: number) => top + (1 - share) * side;
const ticks = [0, 0.2, 0.4, 0.6, 0.8, 1];

/** What came true against what was said: points with intervals, and the diagonal where both agree. */
export const CalibrationFigure = ({ record: { calibration, cases } }: { record: TrackRecord }) => {
  const { t } = useTranslation('evidence');
  const format = useFormat();
  const percent = (share: number) => format.percent(share, 0);
  if (calibration.length === 0) return null;
  const largest = Math.max(...calibration.map((bin) => bin.cases));
  return (
    <Figure
      title={t('record.calibration')}
      captions={{
        unit: t('record.calibrationUnit'),
        period: t('record.calibrationPeriod', { cases: format.count(cases) }),
        interval: t('record.calibrationInterval'),
      }}
      table={<BinTable bins={calibration} />}
    >
      <svg className={classes.picture} viewBox="0 0 400 384" role="img" aria-label={t('record.calibrationSpoken')}>
        <rect x={left} y={top} width={side} height={side} fill={ink.sheet} stroke={ink.rule} />
        {ticks.map((tick) => (
          <g key={tick}>
            <text x={at(tick)} y={top + side + 18} textAnchor="middle">
              {percent(tick)}
            </text>
            <text x={left - 8} y={up(tick) + 4} textAnchor="end">
              {percent(tick)}
            </text>
          </g>
        ))}
        <text x={at(0.5)} y={top + side + 40} textAnchor="middle">
          {t('record.said')}
        </text>
        <text transform={`rotate(-90 14 ${up(0.5)})`} x={14} y={up(0.5)} textAnchor="middle">
          {t('record.came')}
        </text>
        <line x1={at(0)} y1={up(0)} x2={at(1)} y2={up(1)} stroke={ink.quiet} strokeDasharray="6 5" />
        {calibration.map((bin) => (
          <Point key={bin.from} bin={bin} radius={4 + 6 * Math.sqrt(bin.cases / largest)} />
        ))}
      </svg>
    </Figure>
  );
};

const Point = ({ bin: { said, came }, radius }: { bin: Bin; radius: number }) => (
  <g>
    <line
      x1={at(said)}
      x2={at(said)}
      y1={up(came.interval.low)}
      y2={up(came.interval.high ?? 1)}
      stroke={ink.strong}
      strokeWidth="2"
    />
    <circle cx={at(said)} cy={up(came.value)} r={radius} fill={ink.booked} stroke={ink.sheet} />
  </g>
);

const BinTable = ({ bins }: { bins: readonly Bin[] }) => {
  const { t } = useTranslation('evidence');
  const format = useFormat();
  const percent = (share: number) => format.percent(share, 0);
  return (
    <DataTable
      caption={t('record.calibration')}
      hideCaption
      rows={bins}
      rowKey={({ from }) => String(from)}
      columns={[
        {
          id: 'bin',
          header: t('record.said'),
          rowHeader: true,
          phone: 'title',
          cell: ({ from, to }) => t('record.bin', { from: percent(from), to: percent(to) }),
        },
        { id: 'cases', header: t('record.cases'), align: 'end', cell: (bin) => format.count(bin.cases) },
        {
          id: 'came',
          header: t('record.came'),
          align: 'end',
          cell: ({ came }) => (
            <EstimateText estimate={{ ...came, reason: null }} write={percent} writeLimit={percent} brief />
          ),
        },
      ]}
    />
  );
};
