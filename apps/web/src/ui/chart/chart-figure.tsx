/** A chart with words: a title that asks or answers, the canvas with a spoken name, what it is about, and the same figures as a table. */
import './register.ts';
import { Button } from '@mantine/core';
import { useDisclosure } from '@mantine/hooks';
import { IconTable } from '@tabler/icons-react';
import type { ChartConfiguration, ChartType } from 'chart.js';
import { type ReactNode, useId } from 'react';
import { Chart } from 'react-chartjs-2';
import { useTranslation } from 'react-i18next';
import classes from './chart-figure.module.css';

export interface Captions {
  unit: string;
  period: string;
  filter?: string;
  interval?: string;
}

interface FigureProps {
  title: string;
  captions: Captions;
  /** The same figures as a real table. */
  table: ReactNode;
  children: ReactNode;
}

/** Any drawing with title, captions and its table behind a toggle. */
export const Figure = ({ title, captions, table, children }: FigureProps) => {
  const { t } = useTranslation('ui');
  const [open, { toggle }] = useDisclosure();
  const id = useId();
  return (
    <figure className={classes.figure} aria-labelledby={id}>
      <header className={classes.head}>
        <h2 id={id}>{title}</h2>
        <Button
          variant="subtle"
          size="compact-sm"
          className="no-print"
          leftSection={<IconTable size={16} aria-hidden />}
          aria-expanded={open}
          onClick={toggle}
        >
          {t(open ? 'chart.hideTable' : 'chart.showTable')}
        </Button>
      </header>
      {children}
      <figcaption className={classes.captions}>
        {(['unit', 'period', 'filter', 'interval'] as const).map(
          (part) =>
            captions[part] && (
              <span key={part}>
                {t(`chart.${part}`)}: {captions[part]}
              </span>
            ),
        )}
      </figcaption>
      {open && table}
    </figure>
  );
};

interface ChartProps<Type extends ChartType> extends Omit<FigureProps, 'children'> {
  /** Said instead of the picture: its main point in a sentence. */
  spoken: string;
  config: ChartConfiguration<Type>;
  /** Height in rem. */
  height?: number;
}

export const ChartFigure = <Type extends ChartType>({ spoken, config, height = 22, ...figure }: ChartProps<Type>) => (
  <Figure {...figure}>
    <div className={classes.canvas} style={{ height: `${height}rem` }}>
      <Chart type={config.type} data={config.data} options={config.options} role="img" aria-label={spoken} />
    </div>
  </Figure>
);
