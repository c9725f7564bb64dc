import { useNavigate, useSearch } from '@tanstack/react-router';
import type { AnalysisFilter } from '#contracts/shared/filter.ts';

export type FilterValues = Partial<AnalysisFilter>;

/** The filter of the page's address, and a way to change parts of it; `undefined` takes a part out. */
export const useFilter = (): readonly [FilterValues, (patch: FilterValues) => void] => {
  const filter = useSearch({ strict: false }) as FilterValues;
  const navigate = useNavigate();
  const change = (patch: FilterValues) =>
    void navigate({ to: '.', search: ((now: object) => ({ ...now, ...patch })) as never, resetScroll: false });
  return [filter, change];
};
