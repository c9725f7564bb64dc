import type { z } from 'zod';
import type { Pareto, ParetoQuery } from '#contracts/analyses.ts';
import type { Asked } from './asked.service.ts';
import { isExposureDimension } from './exposure.queries.ts';
import type { Counted } from './pareto.groups.ts';
import { presentPareto } from './pareto.present.ts';
import { codesOf, exposureByKey, sumsByKey } from './pareto.queries.ts';
import { comparedPeriod } from './period.rules.ts';

export type ParetoAsked = Pick<z.output<typeof ParetoQuery>, 'dimension' | 'measure' | 'compare' | 'top' | 'bars'>;

/** What a Pareto is made of: sums and production per key, now and in the period compared with. */
export async function countPareto(
  asked: Asked,
  { dimension, measure, compare }: ParetoAsked,
): Promise<{ counted: Counted; compared: Pareto['compared'] }> {
  const compared = comparedPeriod(asked.period, compare);
  const spread = measure === 'booked' || measure === 'withEstimates' ? measure : null;
  const place = isExposureDimension(dimension) ? dimension : null;
  const [now, before, exposure, exposureBefore] = await Promise.all([
    sumsByKey(asked, dimension, asked.period, spread),
    compared ? sumsByKey(asked, dimension, compared, spread) : [],
    exposureByKey(asked, place, asked.period),
    compared ? exposureByKey(asked, place, compared) : [],
  ]);
  return { counted: { now, before, exposure, exposureBefore }, compared };
}

export async function paretoOf(asked: Asked, options: ParetoAsked): Promise<Pareto> {
  const { counted, compared } = await countPareto(asked, options);
  const answer = presentPareto(asked, options, counted, compared);
  const codes = await codesOf(
    asked,
    options.dimension,
    answer.bars.map(({ key }) => key),
  );
  return { ...answer, bars: answer.bars.map((bar) => ({ ...bar, label: codes.get(bar.key) ?? bar.key })) };
}
