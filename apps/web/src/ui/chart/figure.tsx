import { Button } from '@mantine/core';
import { useDisclosure } from '@mantine/hooks';
import { IconTable } from '@tabler/icons-react';
import { type ReactNode, useId } from 'react';
import { useTranslation } from 'react-i18next';
import classes from './figure.module.css';

export interface Captions {
  unit: string;
  period: string;
  filter?: string;
  interval?: string;
}

export interface FigureProps {
  title: string;
  captions: Captions;
  /** The same figures as a real table; left out where the page shows that table anyway. */
  table?: ReactNode;
  children: ReactNode;
}

/** A drawing with words: a title that asks or answers, what it is about, and the same figures as a table behind a toggle. */
export const Figure = ({ title, captions, table, children }: FigureProps) => {
  const { t } = useTranslation('ui');
  const [open, { toggle }] = useDisclosure();
  const id = useId();
  return (
    <figure className={classes.figure} aria-labelledby={id}>
      <header className={classes.head}>
        <h2 id={id}>{title}</h2>
        {table && (
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
        )}
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
