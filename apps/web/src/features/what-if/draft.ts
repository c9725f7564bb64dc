/** A scenario as it is typed: shares in percent, fields that may still be empty. Pure. */
import { type PreventionKind, preventionActsOn } from '#contracts/prevention.ts';
import type { Input } from '#contracts/shared/endpoint.ts';
import type { Cause } from '#contracts/taxonomy.ts';
import type { WhatIfInput } from '#contracts/what-if.ts';

export interface DraftEffect {
  cause: Cause | null;
  low: number | '';
  likely: number | '';
  high: number | '';
  actionId: string | null;
}
export interface DraftOption {
  key: string;
  kind: PreventionKind;
  name: string;
  onceMinor: number | undefined;
  yearlyMinor: number | undefined;
  effects: DraftEffect[];
  excludes: string[];
  chosen: boolean;
}
export interface Draft {
  options: DraftOption[];
  horizonYears: number | '';
  budgetMinor: number | undefined;
  money: WhatIfInput['money'];
  seed: number | '';
}

export const emptyEffect = (cause: Cause | null): DraftEffect => ({
  cause,
  low: '',
  likely: '',
  high: '',
  actionId: null,
});

export const effectsOf = (kind: PreventionKind): DraftEffect[] => {
  const causes = preventionActsOn[kind];
  return causes.length > 0 ? causes.slice(0, 1).map(emptyEffect) : [emptyEffect(null)];
};

const nextKey = (options: readonly DraftOption[]): string => {
  const numbers = options.map(({ key }) => Number(/^o(\d+)$/.exec(key)?.[1] ?? 0));
  return `o${Math.max(0, ...numbers) + 1}`;
};

export const newOption = (options: readonly DraftOption[], kind: PreventionKind, name: string): DraftOption => ({
  key: nextKey(options),
  kind,
  name,
  onceMinor: undefined,
  yearlyMinor: 0,
  effects: effectsOf(kind),
  excludes: [],
  chosen: true,
});

export const emptyDraft = (name: string): Draft => ({
  options: [newOption([], 'push_click_pull', name)],
  horizonYears: 3,
  budgetMinor: undefined,
  money: 'withEstimates',
  seed: 1,
});

const share = (percent: number | '') => (percent === '' ? Number.NaN : Math.round(percent * 100) / 10_000);
/** A share as it is typed, to the hundredth of a percent. */
export const toPercent = (of: number) => Math.round(of * 10_000) / 100;

/** What is sent; fields left empty become values that the contract refuses at their place. */
export const inputOf = ({ options, horizonYears, budgetMinor, money, seed }: Draft): Input<typeof WhatIfInput> => ({
  options: options.map(({ key, kind, name, onceMinor, yearlyMinor, effects, excludes }) => ({
    key,
    kind,
    name,
    onceMinor: onceMinor ?? Number.NaN,
    yearlyMinor: yearlyMinor ?? Number.NaN,
    effects: effects.map(({ cause, low, likely, high, actionId }) => ({
      cause: cause as Exclude<Cause, 'undetermined'>,
      low: share(low),
      likely: share(likely),
      high: share(high),
      actionId,
    })),
    excludes: excludes.filter((other) => options.some((option) => option.key === other)),
  })),
  together: options.filter(({ chosen }) => chosen).map(({ key }) => key),
  horizonYears: horizonYears === '' ? Number.NaN : horizonYears,
  budgetMinor: budgetMinor ?? null,
  money,
  seed: seed === '' ? Number.NaN : seed,
});

export const draftOf = ({ options, together, horizonYears, budgetMinor, money, seed }: WhatIfInput): Draft => ({
  options: options.map(({ key, kind, name, onceMinor, yearlyMinor, effects, excludes }) => ({
    key,
    kind,
    name,
    onceMinor,
    yearlyMinor,
    effects: effects.map(({ cause, low, likely, high, actionId }) => ({
      cause,
      low: toPercent(low),
      likely: toPercent(likely),
      high: toPercent(high),
      actionId,
    })),
    excludes,
    chosen: together.includes(key),
  })),
  horizonYears,
  budgetMinor: budgetMinor ?? undefined,
  money,
  seed,
});
