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
  /** The column or heading already says which it is; the word is then spoken only. */
  named?: boolean;
}

/** Booked money is plain; an estimate has a tilde, stands in italics and says that it is one. */
export const MoneyText = ({ money, basis, short, named }: Props) => {
  const { t } = useTranslation('ui');
  const format = useFormat();
  if (money.amountMinor === 0) {
    const words = t(`money.nothing.${basis}`);
    return (
      <span className={classes.none}>
        {named && <span aria-hidden>–</span>}
        <span className={named ? 'visually-hidden' : undefined}>{words}</span>
      </span>
    );
  }
  const text = short ? format.moneyShort(money) : format.money(money);
  if (basis === 'booked') return <span className={classes.booked}>{text}</span>;
  return (
    <em className={classes.estimated}>
      <span className={classes.booked}>
        <span aria-hidden>~ </span>
        {text}
      </span>{' '}
      <small className={named ? 'visually-hidden' : undefined}>{t('money.estimated')}</small>
    </em>
  );
};
