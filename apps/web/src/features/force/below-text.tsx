import type { ForceJudgement } from '#contracts/force.ts';
import { EstimateText } from '#web/ui/estimate-text.tsx';
import { useFormat } from '#web/ui/language.ts';

/** Terminals below the minimum among a million, with the interval. */
export const BelowText = ({ it, brief }: { it: ForceJudgement; brief?: boolean }) => {
  const format = useFormat();
  const perMillion = (share: number) => format.significant(share * 1e6);
  if (!it.below) return '–';
  return <EstimateText estimate={it.below} write={perMillion} writeLimit={perMillion} brief={Boolean(brief)} />;
};
