import type { Asked } from '#api/features/analyses/asked.service.ts';
import type { Signal, SignalFound, Signals, Silence } from '#contracts/signals.ts';
import type { Master } from './master.queries.ts';
import { type Member, opensOf } from './members.ts';
import { type FoundSignal, falseDiscoveryRate, type Search } from './search.service.ts';

export function namesOf(member: Member, plants: Asked['plants'], master: Master): SignalFound['names'] {
  const code = (rows: Map<string, { code: string }>, id: string | undefined) =>
    id === undefined ? null : (rows.get(id)?.code ?? id);
  return {
    plant: plants.find(({ id }) => id === member.plant)?.code ?? null,
    housing: code(master.housings, member.housing),
    terminal: code(master.terminals, member.terminal),
    tool: code(master.tools, member.tool),
    lot: member.lot ?? null,
    housingLot: member.housingLot ?? null,
    fixturePosition: member.fixturePosition ?? null,
    cavity: member.cavity ?? null,
  };
}

/** Silenced signals come back when the lower limit of their ratio lies above what the ratio was then. */
const hasGrown = (signal: FoundSignal, silence: Silence) => signal.interval.low > silence.ratio;

export function presentSignals(
  { head, plants }: Asked,
  search: Search,
  silences: readonly Silence[],
  listed: number,
  dateOf: (signal: FoundSignal) => Signal['since'],
): Signals {
  const { found, master, shared } = search;
  const show = (signal: FoundSignal): SignalFound => ({
    key: signal.key,
    kind: signal.member.kind,
    names: namesOf(signal.member, plants, master),
    plantId: signal.member.plant,
    opens: opensOf(signal.member),
    observed: signal.observed,
    expected: signal.expected,
    basis: signal.basis,
    peers: signal.peers,
    ratio: signal.ratio,
    interval: signal.interval,
    adjustedP: signal.adjustedP,
    excessAtLeast: signal.excessAtLeast,
  });
  const silenceOf = new Map(silences.map((silence) => [silence.key, silence]));
  const isSilent = (signal: FoundSignal) => {
    const silence = silenceOf.get(signal.key);
    return silence !== undefined && !hasGrown(signal, silence);
  };
  const news = found.filter((signal) => signal.explainedBy === null && !isSilent(signal));
  return {
    ...head,
    falseDiscoveryRate,
    lookedBack: search.lookedBack,
    tested: search.tested,
    withoutExpectation: search.withoutExpectation,
    reports: search.reports,
    signals: news.slice(0, listed).map((signal) => ({
      ...show(signal),
      since: dateOf(signal),
      echoes: found
        .filter(({ explainedBy }) => explainedBy === signal.key)
        .map((echo) => ({ ...show(echo), shared: shared(signal.key, echo.key) })),
      back: silenceOf.has(signal.key),
    })),
    more: search.more + Math.max(0, news.length - listed),
    silenced: silences.map((silence) => {
      const signal = found.find(({ key }) => key === silence.key);
      return { silence, signal: signal && isSilent(signal) ? show(signal) : null };
    }),
  };
}
