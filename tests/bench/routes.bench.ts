import autocannon from 'autocannon';
import { type Spread, spread } from './measure.ts';

interface Load {
  url: string;
  requests: autocannon.Request[];
  headers?: Record<string, string>;
}

const seconds = 4;
const connections = 8;

async function requestsPerSecond({ url, requests, headers }: Load): Promise<number> {
  const result = await autocannon({ url, requests, connections, duration: seconds, ...(headers && { headers }) });
  if (result.non2xx > 0 || result.errors > 0)
    throw new Error(`${url}: ${result.non2xx} refused, ${result.errors} failed of ${result.requests.total}`);
  return result.requests.average;
}

/** Requests per second of both, in turn, after one round that does not count. */
export async function compareRoutes(ours: Load, bare: Load, rounds: number): Promise<{ ours: Spread; bare: Spread }> {
  const rates: { ours: number[]; bare: number[] } = { ours: [], bare: [] };
  for (let round = -1; round < rounds; round++) {
    const pair = { ours: await requestsPerSecond(ours), bare: await requestsPerSecond(bare) };
    if (round < 0) continue;
    rates.ours.push(pair.ours);
    rates.bare.push(pair.bare);
  }
  return { ours: spread(rates.ours), bare: spread(rates.bare) };
}
