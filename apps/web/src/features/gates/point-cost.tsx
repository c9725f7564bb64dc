import { useState } from 'react';
import { MoneyField } from '#web/ui/money-field.tsx';
import classes from './gates.module.css';

interface Props {
  label: string;
  currency: string;
  kept: number | null;
  onKeep: (minor: number | undefined) => void;
}

/** Typed freely, taken over on leaving the field or by Enter: every change is a new computation. */
export const PointCost = ({ label, currency, kept, onKeep }: Props) => {
  const [typed, setTyped] = useState(kept ?? undefined);
  return (
    <MoneyField
      className={classes.cost}
      aria-label={label}
      currency={currency}
      min={0}
      value={typed}
      onChange={setTyped}
      onBlur={() => {
        if ((typed ?? null) !== kept) onKeep(typed);
      }}
      onKeyDown={(event) => {
        if (event.key === 'Enter') event.currentTarget.blur();
      }}
    />
  );
};
