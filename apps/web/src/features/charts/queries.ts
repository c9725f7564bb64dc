import { keepPreviousData, queryOptions } from '@tanstack/react-query';
import { type ChartsQuery, charts } from '#contracts/charts.ts';
import type { FilterValues } from '#web/ui/filter/use-filter.ts';
import { call } from '#web/ui/http.ts';

export type ChartsSearch = Partial<ChartsQuery>;

/** The filter alone, without how the chart is drawn. */
export const filterIn = ({
  kind: _k,
  limits: _l,
  points: _p,
  phaseFrom: _f,
  actions: _a,
  rule: _r,
  oneSide: _o,
  cusumShift: _s,
  falseAlarmEvery: _e,
  ...filter
}: ChartsSearch): FilterValues => filter;

export const chartsQuery = (search: ChartsSearch) =>
  queryOptions({
    queryKey: ['analyses', 'charts', search],
    queryFn: ({ signal }) => call(charts, { query: search as object, signal }),
    placeholderData: keepPreviousData,
  });
