import type { z } from 'zod';
import type { Pareto, ParetoQuery } from '#contracts/analyses.ts';
import type { Asked } from './asked.service.ts';
import { isExposureDimension } from './exposure.queries.ts';
import { presentPareto } from './pareto.present.ts';
import { codesOf, exposureByKey, sumsByKey } from './pareto.queries.ts';
import { comparedPeriod } from './period.rules.ts';

type Options = Pick<z.output<typeof ParetoQuery>, 'dimension' | 'measure' | 'compare' | 'top' | 'bars'>;

export async function paretoOf(asked: Asked, options: Options): Promise<Pareto> {
  const { dimension, measure } = options;
  const compared = comparedPeriod(asked.period, options.compare);
  const spread = measure === 'booked' || measure === 'withEstimates' ? measure : null;
  const place = isExposureDimension(dimension) ? dimension : null;
  const [now, before, exposure, exposureBefore] = await Promise.all([
    sumsByKey(asked, dimension, asked.period, spread),
    compared ? sumsByKey(asked, dimension, compared, spread) : [],
    exposureByKey(asked, place, asked.period),
    compared ? exposureByKey(asked, place, compared) : [],
  ]);
  const answer = presentPareto(asked, options, { now, before, exposure, exposureBefore }, compared);
  const codes = await codesOf(
    asked,
    dimension,
    answer.bars.map(({ key }) => key),
  );
  return { ...answer, bars: answer.bars.map((bar) => ({ ...bar, label: codes.get(bar.key) ?? bar.key })) };
}
