/** A chart on a canvas, in a figure with words. */
import './register.ts';
import type { ChartConfiguration, ChartType } from 'chart.js';
import { Chart } from 'react-chartjs-2';
import classes from './figure.module.css';
import { Figure, type FigureProps } from './figure.tsx';

interface ChartProps<Type extends ChartType> extends Omit<FigureProps, 'children'> {
  /** Said instead of the picture: its main point in a sentence. */
  spoken: string;
  config: ChartConfiguration<Type>;
  /** Height in rem. */
  height?: number;
}

/** An updated chart keeps what its datasets no longer say, such as a direction; so another shape is another chart. */
const shapeOf = ({ type, data, options }: Pick<ChartConfiguration, 'type' | 'data' | 'options'>): string =>
  [type, options?.indexAxis, ...data.datasets.map(({ label }) => label)].join('|');

export const ChartFigure = <Type extends ChartType>({ spoken, config, height = 22, ...figure }: ChartProps<Type>) => (
  <Figure {...figure}>
    <div className={classes.canvas} style={{ '--height': `${height}rem` } as React.CSSProperties}>
      <Chart
        key={shapeOf(config as ChartConfiguration)}
        type={config.type}
        data={config.data}
        options={config.options}
        role="img"
        aria-label={spoken}
      />
    </div>
  </Figure>
);
