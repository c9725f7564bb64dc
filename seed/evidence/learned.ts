import { type CauseName, causes, type PerCause, perCause } from '#analysis/suggestion/causes.ts';
import { buildModel, type PairCounts } from '#analysis/suggestion/learn.ts';
import type { CauseCounts, Seen, SuggestionModel } from '#analysis/suggestion/model.ts';
import { findingPriors } from '#analysis/suggestion/priors.ts';
import type { Answers } from '#analysis/suggestion/suggest.ts';

type Cell = [number, number, number, number];
export interface PairCell {
  plant: string;
  first: string;
  second: string;
  cause: CauseName;
  counts: Cell;
}

const groupOf = new Map(findingPriors.map(({ code, group }) => [code, group]));
const zero = perCause(() => 0);
const nothing = (): Seen => ({ yes: perCause(() => 0), no: perCause(() => 0) });

/** What the replayed cases taught, in the counts that the service keeps, by plant. */
export class Learned {
  readonly answers = new Map<string, Map<string, Seen>>();
  readonly pairs = new Map<string, PairCell>();
  private readonly allPairs = new Map<string, { group: string; cause: CauseName; counts: Cell }>();
  readonly cases = new Map<string, number>();

  get version(): number {
    return [...this.cases.values()].reduce((sum, count) => sum + count, 0);
  }

  learn(plant: string, cause: CauseName, answers: Answers): void {
    this.cases.set(plant, (this.cases.get(plant) ?? 0) + 1);
    const told = [...answers].filter(([, answer]) => answer !== 'could_not_tell').sort(([a], [b]) => (a < b ? -1 : 1));
    const own = this.answers.get(plant) ?? new Map<string, Seen>();
    this.answers.set(plant, own);
    told.forEach(([first, answer], place) => {
      const seen = own.get(first) ?? nothing();
      seen[answer as 'yes' | 'no'][cause] += 1;
      own.set(first, seen);
      for (const [second, other] of told.slice(place + 1)) {
        const group = groupOf.get(first)!;
        if (groupOf.get(second) !== group) continue;
        const cell = (answer === 'yes' ? 0 : 2) + (other === 'yes' ? 0 : 1);
        const key = `${first} ${second} ${cause}`;
        const mine = this.pairs.get(`${plant} ${key}`) ?? { plant, first, second, cause, counts: [0, 0, 0, 0] };
        const all = this.allPairs.get(key) ?? { group, cause, counts: [0, 0, 0, 0] };
        mine.counts[cell]! += 1;
        all.counts[cell]! += 1;
        this.pairs.set(`${plant} ${key}`, mine);
        this.allPairs.set(key, all);
      }
    });
  }

  /** The plant's model from what was learned until now; base rates differ by part and are laid over it. */
  model(plant: string, temperature: number): SuggestionModel {
    const pairs: PairCounts = [...this.allPairs.values()];
    const own = this.answers.get(plant) ?? new Map<string, Seen>();
    const base = { group: zero, plant: zero, part: zero };
    return buildModel(findingPriors, { others: this.others(plant), plant: own, base, pairs, temperature });
  }

  private others(plant: string): Map<string, Seen> {
    const sums = new Map<string, Seen>();
    for (const [code, seen] of this.answers) {
      if (code === plant) continue;
      for (const [finding, { yes, no }] of seen) {
        const sum = sums.get(finding) ?? nothing();
        for (const cause of causes) {
          sum.yes[cause] += yes[cause];
          sum.no[cause] += no[cause];
        }
        sums.set(finding, sum);
      }
    }
    return sums;
  }
}

/** How often each cause was decided on until now, by plant and part. */
export class Tally {
  private readonly parts = new Map<string, PerCause>();
  private readonly plants = new Map<string, PerCause>();
  readonly all: PerCause = { ...zero };

  add(plant: string, housing: string | null, cause: CauseName, step: 1 | -1): void {
    for (const [counts, key] of [
      [this.parts, `${plant} ${housing}`],
      [this.plants, plant],
    ] as const) {
      const own = counts.get(key) ?? { ...zero };
      own[cause] += step;
      counts.set(key, own);
    }
    this.all[cause] += step;
  }

  base(plant: string, housing: string | null): CauseCounts {
    const own = this.plants.get(plant) ?? zero;
    const part = housing === null ? zero : (this.parts.get(`${plant} ${housing}`) ?? zero);
    return {
      group: perCause((cause) => this.all[cause] - own[cause]),
      plant: perCause((cause) => own[cause] - part[cause]),
      part,
    };
  }

  get frequent(): CauseName {
    return causes.reduce((best, cause) => (this.all[cause] > this.all[best] ? cause : best));
  }
}
