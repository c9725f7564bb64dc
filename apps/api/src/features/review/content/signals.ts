import type { Asked } from '#api/features/analyses/asked.service.ts';
import { signalsOf } from '#api/features/signals/signals.service.ts';
import { queryOf } from '#api/features/week/links.ts';
import type { ReviewContent } from '#contracts/review-content.ts';
import type { Filter } from '#contracts/shared/filter.ts';

const listed = 6;

/** What fails more than it should over the thirteen weeks; what was called “not news” is counted only. */
export async function signalsPart(quarter: Asked, asked: Filter, at: Date): Promise<ReviewContent['signals']> {
  const { signals, silenced, more, falseDiscoveryRate, tested } = await signalsOf(quarter, at);
  return {
    falseDiscoveryRate,
    tested,
    list: signals.slice(0, listed).map(({ echoes, ...signal }) => ({
      ...signal,
      echoes: echoes.length,
      filter: queryOf({ ...asked, ...signal.opens }),
    })),
    more: more + Math.max(0, signals.length - listed),
    silenced: silenced.length,
  };
}
