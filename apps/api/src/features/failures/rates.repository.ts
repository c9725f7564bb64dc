import { problem } from '#api/platform/problems.ts';
import type { Tx } from '#db/client.ts';
import { convertMinor, findWay, type Rate } from './conversion.rules.ts';

const dayOf = (date: Date) => date.toISOString().slice(0, 10);

/** The rates that hold on a day, the newest of each pair, among the currencies named. */
async function ratesOn(tx: Tx, day: string, currencies: readonly string[]): Promise<Rate[]> {
  const among = { in: [...currencies] };
  const rows = await tx.exchangeRate.findMany({
    where: { base: among, quote: among, validFrom: { lte: new Date(day) }, retiredAt: null },
    orderBy: { validFrom: 'desc' },
    distinct: ['base', 'quote'],
  });
  return rows.map(({ base, quote, rate, validFrom }) => ({ base, quote, rate: rate.toFixed(), on: dayOf(validFrom) }));
}

/**
 * An amount in the plant's currency at the rates of the day; `rateOn` is the date of the oldest rate used.
 * @throws `missing_rate` naming the rate to enter
 */
export async function convertOn(
  tx: Tx,
  day: string,
  amountMinor: number,
  from: string,
  to: string,
): Promise<{ minor: bigint; rateOn: string | null }> {
  if (from === to) return { minor: BigInt(amountMinor), rateOn: null };
  const { currency: group } = await tx.organisation.findFirstOrThrow();
  const way = findWay(await ratesOn(tx, day, [...new Set([from, to, group])]), from, to, group);
  if (!way)
    throw problem(
      'missing_rate',
      `No exchange rate between ${from} and ${to} holds on ${day}. Enter one under master data, exchange rates, that is valid from ${day} or earlier, or give the amount in ${to}.`,
      [{ path: 'body/currency', message: `has no rate to ${to} on ${day}` }],
    );
  const [rateOn = null] = way.map(({ on }) => on).sort();
  return { minor: convertMinor(amountMinor, from, to, way), rateOn };
}

/**
 * The plant's hourly rate on a day, minor units of its currency.
 * @throws `missing_rate` saying what to enter
 */
export async function hourlyRateOn(
  tx: Tx,
  plant: { id: string; code: string },
  kind: 'labour' | 'line_stop',
  day: string,
): Promise<bigint> {
  const row = await tx.costRate.findFirst({
    where: { plantId: plant.id, kind, retiredAt: null, validFrom: { lte: new Date(day) } },
    orderBy: { validFrom: 'desc' },
  });
  if (!row)
    throw problem(
      'missing_rate',
      `Plant ${plant.code} has no ${kind === 'labour' ? 'labour' : 'line-stop'} rate that holds on ${day}. Enter one under master data, cost rates, valid from ${day} or earlier, or give an amount instead of minutes.`,
      [{ path: 'body/minutes', message: `no ${kind} rate on ${day}` }],
    );
  return row.hourlyMinor;
}
