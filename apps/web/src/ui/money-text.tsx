import { useTranslation } from 'react-i18next';
import type { z } from 'zod';
import type { Money } from '#contracts/shared/scalars.ts';
import type { CostBasis } from '#contracts/taxonomy.ts';
import classes from './figures.module.css';
import { useFormat } from './language.ts';

interface Props {
  money: Money;
  basis: z.infer<typeof CostBasis>;
  short?: boolean;
}

/** Booked money is plain; an estimate has a tilde, stands in italics and says that it is one. */
export const MoneyText = ({ money, basis, short }: Props) => {
  const { t } = useTranslation('ui');
  const format = useFormat();
  const text = short ? format.moneyShort(money) : format.money(money);
  if (basis === 'booked') return <span className={classes.booked}>{text}</span>;
  return (
    <em className={classes.estimated}>
      <span aria-hidden>~ </span>
      {text} <small>{t('money.estimated')}</small>
    </em>
  );
};
