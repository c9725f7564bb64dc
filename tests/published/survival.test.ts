import { describe, expect, it } from 'vitest';
import { kaplanMeier, type Lifetime } from '#analysis/survival/kaplan-meier.ts';
import { expectAbsolute, expectRelative, reference } from './reference.ts';

const lifetimes = (times: number[], status: number[]): Lifetime[] =>
  times.map((time, place) => ({ time, failed: status[place] === 1 }));

describe('Kaplan-Meier', () => {
  type Steps = { time: number[]; surv: number[]; se: number[] };
  const sixMp = reference<{ time: number[]; status: number[] }, Steps>('6-km-6mp');
  it(sixMp.title, () => {
    const steps = kaplanMeier(lifetimes(sixMp.input.time, sixMp.input.status));
    expect(steps.map(({ time }) => time)).toEqual(sixMp.expected.time);
    steps.forEach(({ survival, standardError }, place) => {
      expectRelative(survival, sixMp.expected.surv[place]!);
      expectRelative(standardError, sixMp.expected.se[place]!);
    });
  });

  it('the same units said in groups give the same steps', () => {
    const { time, status } = sixMp.input;
    const groups = [...Map.groupBy(lifetimes(time, status), (one) => `${one.time} ${one.failed}`).values()];
    const grouped = groups.map((group) => ({ ...group[0]!, units: group.length }));
    expect(grouped.length).toBeLessThan(time.length);
    expect(kaplanMeier(grouped)).toEqual(kaplanMeier(lifetimes(time, status)));
  });

  type Aml = { Maintained_time: number[]; Maintained_status: number[] };
  const aml = reference<Aml, { time: number[]; surv: number[]; se_at_events: number[] }>('6-km-aml');
  it(`${aml.title}: the maintained group`, () => {
    const steps = kaplanMeier(lifetimes(aml.input.Maintained_time, aml.input.Maintained_status));
    steps.forEach(({ time, survival, standardError }, place) => {
      expectRelative(survival, aml.expected.surv[aml.expected.time.indexOf(time)]!);
      expectRelative(standardError, aml.expected.se_at_events[place]!);
    });
    expect(steps).toHaveLength(aml.expected.se_at_events.length);
  });

  type Limits = { low: number[]; high: number[] };
  const limits = reference<{ time: number[]; status: number[] }, Limits>('added-km-interval');
  it.each(limits.cases)(limits.title, ({ input, expected }) => {
    kaplanMeier(lifetimes(input.time, input.status)).forEach(({ interval }, place) => {
      expectAbsolute(interval!.low, expected.low[place]!, 1e-9);
      expectAbsolute(interval!.high, expected.high[place]!, 1e-9);
    });
  });

  it('ends at 0 when the last unit fails, and has no step without a failure', () => {
    expect(kaplanMeier(lifetimes([1, 2], [1, 1])).at(-1)).toMatchObject({ survival: 0, interval: null });
    expect(kaplanMeier(lifetimes([1, 2], [0, 0]))).toEqual([]);
  });
});
