export interface Spread {
  median: number;
  low: number;
  high: number;
}

export function spread(values: readonly number[]): Spread {
  const sorted = values.toSorted((a, b) => a - b);
  return { median: sorted[Math.floor(sorted.length / 2)]!, low: sorted[0]!, high: sorted.at(-1)! };
}

export async function milliseconds(work: () => Promise<unknown>): Promise<number> {
  const start = performance.now();
  await work();
  return performance.now() - start;
}

/** Runs each piece of work `rounds` times, in turn, after one round that does not count. */
export async function inTurn(works: readonly (() => Promise<unknown>)[], rounds: number): Promise<Spread[]> {
  const times: number[][] = works.map(() => []);
  for (let round = -1; round < rounds; round++)
    for (const [place, work] of works.entries()) {
      const time = await milliseconds(work);
      if (round >= 0) times[place]!.push(time);
    }
  return times.map(spread);
}
