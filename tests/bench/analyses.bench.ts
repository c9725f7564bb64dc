import type { DuckDBConnection } from '@duckdb/node-api';
import { inTurn, type Spread, spread } from './measure.ts';
import type { Question } from './questions.ts';

export interface AnalysisResult {
  name: string;
  ours: Spread;
  duck: Spread;
  /** ours ÷ DuckDB, round by round */
  ratio: number;
}

type Ask = (path: string) => Promise<{ period: { from: string; to: string } }>;

/** Each endpoint, whole, against the same question asked of DuckDB, in turn. */
export async function measureAnalyses(
  questions: readonly Question[],
  ask: Ask,
  duck: DuckDBConnection,
  rounds: number,
): Promise<AnalysisResult[]> {
  const results: AnalysisResult[] = [];
  for (const { name, path, sql } of questions) {
    const statements = sql((await ask(path)).period);
    const askDuck = async () => {
      for (const statement of statements) (await duck.runAndReadAll(statement)).getRows();
    };
    const [ours, theirs] = await inTurn([() => ask(path), askDuck], rounds);
    results.push({ name, ours: ours!, duck: theirs!, ratio: ours!.median / theirs!.median });
  }
  return results;
}

/** The calls that the week's page makes, sent together; the slowest ends the round. */
export async function measureWeekPage(paths: readonly string[], ask: Ask, rounds: number) {
  const times: number[] = [];
  for (let round = -2; round < rounds; round++) {
    const start = performance.now();
    await Promise.all(paths.map(ask));
    if (round >= 0) times.push(performance.now() - start);
  }
  const sorted = times.toSorted((a, b) => a - b);
  return { ...spread(times), p95: sorted[Math.ceil(0.95 * sorted.length) - 1]! };
}
