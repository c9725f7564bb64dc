import { useTranslation } from 'react-i18next';
import type { ReportRow } from '#contracts/failures.ts';
import { MoneyText } from '#web/ui/money-text.tsx';
import { estimateOf } from '../estimate-of.ts';
import classes from './list.module.css';

/** Booked and estimated one below the other, never added up. */
export const CostText = ({ cost }: { cost: ReportRow['cost'] }) => {
  const { t } = useTranslation('failures');
  const { currency, bookedMinor } = cost;
  const estimate = estimateOf(cost);
  if (bookedMinor === 0 && estimate === null) return <span className={classes.quiet}>{t('list.noCost')}</span>;
  return (
    <span className={classes.costs}>
      {bookedMinor !== 0 && <MoneyText money={{ amountMinor: bookedMinor, currency }} basis="booked" />}
      {estimate !== null && <MoneyText money={{ amountMinor: estimate, currency }} basis="estimated" named />}
    </span>
  );
};
