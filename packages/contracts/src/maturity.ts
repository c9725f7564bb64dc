/** Field maturity: how many failures are still to come from what is already built. */
import { z } from 'zod';
import { AnalysisHead } from './analyses.ts';
import { endpoint } from './shared/endpoint.ts';
import { Estimate, Interval } from './shared/estimate.ts';
import { AnalysisFilter } from './shared/filter.ts';

const Month = z.string().regex(/^\d{4}-\d{2}$/);

export const BuildMonthRow = z.object({
  month: Month.describe('month of building'),
  produced: z.int().nullable().describe('units built; null where no production was reported'),
  age: z.int().describe('whole months in service at the last month; 0 is the month of building'),
  cumulative: z.array(z.int()).describe('reports found up to 0, 1, … `age` months after building'),
  final: Estimate.describe('expected final count (chain ladder); interval from Mack’s standard error'),
  standardError: z.number().nullable().describe('Mack’s standard error of the final count'),
  maturity: z.number().nullable().describe('share of the final count that is reported by now, 0 to 1'),
  mature: z.boolean().describe('false: too young to be compared with older months by its raw count'),
  finalPerMillion: Estimate.describe('expected final reports per million units built; what months are compared by'),
  filter: z.string().describe('query string that opens all its reports so far'),
});
export type BuildMonthRow = z.infer<typeof BuildMonthRow>;

export const SurvivalStep = z.object({
  months: z.number().describe('time in service'),
  atRisk: z.int(),
  failures: z.int(),
  failed: z.number().describe('share of the units built that has failed by then (1 − Kaplan–Meier)'),
  interval: Interval.nullable(),
});

export const Maturity = AnalysisHead.extend({
  lastMonth: Month.describe('the last month that is fully reported; what was found later is not counted'),
  recordsFrom: Month.describe(
    'the first whole month with reports: earlier build months were not seen from their start',
  ),
  reports: z.int().describe('reports from customers and the field in the triangle'),
  rows: z.array(BuildMonthRow).describe('oldest first'),
  reportedByAge: z.array(z.number()).describe('share of the final count reported by each age in months, 0 to 1'),
  toCome: z.object({ value: z.number(), standardError: z.number().nullable() }).describe('over all build months'),
  leftOut: z
    .array(
      z.object({
        reason: z.enum(['no_build_date', 'built_earlier']),
        reports: z.int(),
        filter: z.string(),
      }),
    )
    .describe('reports that no row of the triangle holds'),
  life: z.object({
    reports: z.int().describe('failures with a build date in months with reported production'),
    units: z.int().describe('units built in those months'),
    steps: z.array(SurvivalStep),
    weibull: z.object({
      shape: Estimate.describe('below 1 the failure rate falls with age, above 1 it rises'),
      characteristicLifeMonths: Estimate.describe('time by which 63.2 % would have failed'),
      curve: z.array(z.object({ months: z.number(), failed: Estimate })),
    }),
  }),
  forecast: z.object({
    perMillion: Estimate.describe('failures per million units built, over the whole time seen'),
    months: z.array(z.object({ month: Month, failures: Estimate })),
    total: Estimate,
  }),
});
export type Maturity = z.infer<typeof Maturity>;

export const maturity = endpoint({
  method: 'GET',
  path: '/api/v1/analyses/maturity',
  access: 'analyses.read',
  tag: 'analyses',
  summary: 'Months-in-service triangle, expected final counts, life and what is still to come from the field',
  query: AnalysisFilter.extend({
    months: z.coerce.number().int().min(3).max(60).default(24).describe('build months shown; `from` is not used'),
    horizon: z.coerce.number().int().min(1).max(24).default(6).describe('months forecast'),
  }),
  response: Maturity,
});
