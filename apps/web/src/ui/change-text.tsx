import { IconArrowDownRight, IconArrowUpRight, IconMinus } from '@tabler/icons-react';
import { useTranslation } from 'react-i18next';
import classes from './change-text.module.css';
import { useFormat } from './language.ts';

interface Props {
  /** Relative change; null where the earlier figure was nothing. */
  ratio: number | null;
  /** Whether it moved beyond what chance explains; undefined where nobody tested it. */
  beyondNoise?: boolean;
  /** Against what. */
  against: string;
}

/** How a figure moved. Only a move beyond noise is coloured; fewer is better. */
export const ChangeText = ({ ratio, beyondNoise, against }: Props) => {
  const { t } = useTranslation('ui');
  const format = useFormat();
  if (ratio === null) return <span className={classes.quiet}>{t('change.noBefore', { against })}</span>;
  const Icon = ratio > 0 ? IconArrowUpRight : ratio < 0 ? IconArrowDownRight : IconMinus;
  const tone = !beyondNoise ? classes.quiet : ratio > 0 ? classes.worse : classes.better;
  return (
    <span className={`${classes.change} ${tone}`}>
      <Icon size={16} aria-hidden />
      {format.change(ratio)} {against}
      {beyondNoise !== undefined && <> · {t(beyondNoise ? 'change.beyondNoise' : 'change.withinNoise')}</>}
    </span>
  );
};
