import { useTranslation } from 'react-i18next';
import type { ClockState } from '#contracts/complaint-parts.ts';
import { useFormat } from '#web/ui/language.ts';
import classes from './complaints.module.css';
import { timeLeft } from './time-left.ts';

/** How a clock stands, in words; the shade only helps the eye. */
export const ClockMark = ({ state, minutesLeft }: { state: ClockState; minutesLeft: number }) => {
  const { t } = useTranslation('complaints');
  const format = useFormat();
  const { unit, count } = timeLeft(minutesLeft);
  return (
    <span className={classes.mark} data-state={state}>
      {t(`clockState.${state}`, { time: t(`time.${unit}`, { count, shown: format.count(count) }) })}
    </span>
  );
};
