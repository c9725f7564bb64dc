import { Link } from '@tanstack/react-router';
import { useTranslation } from 'react-i18next';
import type { Stage } from '#contracts/taxonomy.ts';
import type { FilterValues } from '#web/ui/filter/use-filter.ts';
import { useTerms } from '#web/ui/language.ts';
import classes from './escapes.module.css';
import { flowOf } from './flow.ts';
import type { Cell, Matrix } from './matrix.ts';
import { type Weight, weightOf } from './weights.ts';

interface Props {
  matrix: Matrix;
  weight: Weight;
  upright: boolean;
  write: (value: number) => string;
  filterOf: (cell: Cell) => FilterValues;
  spoken: string;
}

/** Only the widest arcs carry their figure; the rest say it when pointed at and stand in the matrix. */
const labelled = 6;
/** Two gates lie between stages that are three steps apart. */
const reach = (steps: number): 'one' | 'many' => (steps >= 3 ? 'many' : 'one');

export const FlowPicture = ({ matrix, weight, upright, write, filterOf, spoken }: Props) => {
  const { t } = useTranslation('escapes');
  const terms = useTerms();
  const flow = flowOf(
    matrix,
    weight,
    upright ? { along: 620, across: 230, margin: 24, upright } : { along: 1120, across: 400, margin: 56, upright },
  );
  const { line } = flow;
  const box = upright ? '-132 0 372 620' : '0 0 1120 470';
  const name = (cell: Cell, figure: string) =>
    t('flow.arc', { origin: terms.stage[cell.origin as Stage], found: terms.stage[cell.found], figure });
  const place = (at: number) => (upright ? { cx: 0, cy: at } : { cx: at, cy: line.base });

  return (
    // biome-ignore lint/a11y/useSemanticElements: a group of links drawn in SVG has no HTML element
    <svg viewBox={box} className={classes.flow} role="group" aria-label={spoken} data-upright={upright || undefined}>
      {flow.arcs.map(({ cell, width, path, weight: figure }) => (
        <Link
          key={`${cell.origin}-${cell.found}`}
          to="/failures"
          search={filterOf(cell)}
          aria-label={name(cell, write(figure))}
          tabIndex={-1}
        >
          <path d={path} strokeWidth={width} className={classes.arc} data-reach={reach(cell.steps ?? 0)}>
            <title>{name(cell, write(figure))}</title>
          </path>
        </Link>
      ))}
      <path
        d={upright ? `M0 ${line.from}V${line.to}` : `M${line.from} ${line.base}H${line.to}`}
        className={classes.process}
      />
      {flow.spots.map(({ stage, at, here, radius }) => (
        <g key={stage}>
          <circle {...place(at)} r={radius} className={here ? classes.here : classes.stop}>
            {here && (
              <title>{t('flow.here', { stage: terms.stage[stage], figure: write(weightOf(here, weight)) })}</title>
            )}
          </circle>
          {upright ? (
            <text x={-26} y={at + 4} textAnchor="end" className={classes.stage}>
              {terms.stageShort[stage]}
            </text>
          ) : (
            <text x={at} y={line.base + 36} textAnchor="middle" className={classes.stage}>
              {terms.stageShort[stage]}
            </text>
          )}
        </g>
      ))}
      {flow.arcs.slice(0, labelled).map(({ cell, top, weight: figure }) => (
        <text
          key={`${cell.origin}-${cell.found}`}
          x={top.x + (upright ? 2 : 0)}
          y={top.y + 4}
          textAnchor="middle"
          className={classes.figure}
        >
          {write(figure)}
        </text>
      ))}
    </svg>
  );
};
