import { upperLimitAfterSample } from '#analysis/sampling/upper-limit-after-sample.ts';
import type { PlaceState } from '#contracts/containment-parts.ts';
import { places } from '#contracts/containment-parts.ts';
import type { StoredContainment } from './containment.queries.ts';

const total = <Row>(rows: readonly Row[], of: (row: Row) => number) => rows.reduce((sum, row) => sum + of(row), 0);

/** From so many finds on, the exact sum over a fixed lot is left for the limit of a long series, which is wider. */
const manyFound = 5000;

/** What a random sample leaves possible among the parts of a place; null without a random sample. */
function limitOf(quantity: number | null, samples: StoredContainment['sortings']): PlaceState['limit'] {
  const inspected = total(samples, (row) => row.inspected);
  const found = total(samples, (row) => row.found);
  if (inspected === 0 || (quantity !== null && inspected >= quantity)) return null;
  return upperLimitAfterSample(found, inspected, found > manyFound ? null : quantity);
}

/** Each place with what was stated, inspected, found, and is left. Withdrawn results do not count. */
export function placeStates({ stated, sortings }: Pick<StoredContainment, 'stated' | 'sortings'>): PlaceState[] {
  const valid = sortings.filter(({ withdrawnAt }) => withdrawnAt === null);
  return places.map((place) => {
    const there = stated.find((row) => row.place === place);
    const rows = valid.filter((row) => row.place === place);
    const quantity = there?.quantity ?? null;
    const inspected = total(rows, (row) => row.inspected);
    const samples = rows.filter(({ sample }) => sample);
    return {
      place,
      quantity,
      note: there?.note ?? null,
      statedAt: there?.statedAt ?? null,
      inspected,
      found: total(rows, (row) => row.found),
      sampled: samples.length > 0,
      left: quantity === null ? null : Math.max(0, quantity - inspected),
      limit: limitOf(quantity, samples),
    };
  });
}
