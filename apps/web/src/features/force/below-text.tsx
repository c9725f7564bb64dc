import type { ForceJudgement } from '#contracts/force.ts';
import { EstimateText } from '#web/ui/estimate-text.tsx';
import { useFormat } from '#web/ui/language.ts';
import { perMillion } from './words.ts';

/** Terminals below the minimum among a million, with the interval. */
export const BelowText = ({ it, brief }: { it: ForceJudgement; brief?: boolean }) => {
  const format = useFormat();
  const write = (share: number) => perMillion(share, format);
  if (!it.below) return '–';
  return <EstimateText estimate={it.below} write={write} writeLimit={write} brief={Boolean(brief)} />;
};
