import { IconArrowDownRight, IconArrowUpRight, IconEqual } from '@tabler/icons-react';
import { useTranslation } from 'react-i18next';
import type { Change } from '#contracts/shared/change.ts';
import classes from './change-text.module.css';
import { useFormat, useTerms } from './language.ts';

const looks = {
  up: { Icon: IconArrowUpRight, tone: classes.worse },
  down: { Icon: IconArrowDownRight, tone: classes.better },
  within_noise: { Icon: IconEqual, tone: classes.quiet },
} as const;

/** How a figure moved, and whether beyond noise; only then it is coloured. Fewer failures are better. */
export const ChangeText = ({ change, against, brief }: { change: Change; against?: string; brief?: boolean }) => {
  const { t } = useTranslation('ui');
  const format = useFormat();
  const terms = useTerms();
  if (change.reason !== null)
    return (
      <span className={classes.quiet}>
        {brief ? terms.reasonShort[change.reason] : t('change.none', { reason: terms.reason[change.reason] })}
      </span>
    );
  const { Icon, tone } = looks[change.verdict];
  const limits =
    change.interval.high === null
      ? t('interval.atLeast', { low: format.change(change.interval.low - 1) })
      : t('interval.range', {
          low: format.change(change.interval.low - 1),
          high: format.change(change.interval.high - 1),
        });
  return (
    <span className={classes.change}>
      <span className={`${classes.moved} ${tone}`}>
        <Icon size={16} aria-hidden />
        {change.ratio === null ? t('change.new') : format.change(change.ratio - 1)} {against}
      </span>
      <span className={`${classes.quiet} ${brief ? classes.limits : ''}`}>
        ({limits}
        <span className={brief ? 'visually-hidden' : undefined}>; {t(`change.${change.verdict}`)}</span>)
      </span>
    </span>
  );
};
