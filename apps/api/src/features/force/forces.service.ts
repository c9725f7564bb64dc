import { DateTime } from 'luxon';
import { addDays } from '#analysis/calendar/day.ts';
import { runChart } from '#analysis/force/run-chart.ts';
import { type Actor, choosePlants } from '#api/platform/actor.ts';
import { notFound, problem } from '#api/platform/problems.ts';
import type { ForceDetail, ForceGroup, forceDetail, forceOverview } from '#contracts/force.ts';
import type { Output } from '#contracts/shared/endpoint.ts';
import type { Database } from '#db/client.ts';
import { readMeasured } from './forces.queries.ts';
import { byNeed, byTool, judge } from './judgement.rules.ts';

const usualDays = 364;
const mostSamples = 300;

/** The period asked for; the last 52 weeks where nothing is said. Days are plants' own, so that the day is still today anywhere. */
function periodOf({ from, to }: { from?: string | undefined; to?: string | undefined }, at: Date) {
  const end = to ?? addDays(DateTime.fromJSDate(at, { zone: 'utc+14' }).toFormat('yyyy-MM-dd'), 1);
  const start = from ?? addDays(end, -usualDays);
  if (start < end) return { from: start, to: end };
  throw problem('not_consistent', 'The period must end after it starts; `to` is the day after its last day.', [
    { path: 'querystring/to', message: 'must be after `from`' },
  ]);
}

export async function overviewOf(
  db: Database,
  actor: Actor,
  query: Output<typeof forceOverview.query & {}>,
  at: Date,
): Promise<{ period: { from: string; to: string }; groups: ForceGroup[] }> {
  const period = periodOf(query, at);
  const samples = await readMeasured(db, choosePlants(actor, 'force.read', query.plant), { ...query, ...period });
  const groups = [...Map.groupBy(samples, ({ kind, terminalId }) => `${kind} ${terminalId}`).values()].map((own) => {
    const { kind, terminalId, terminalCode, day: newest } = own.at(-1)!;
    const weakTools = byTool(own).flatMap(({ meetsMinimum, toolCode, plantCode }) =>
      meetsMinimum === false ? [`${toolCode ?? '–'} (${plantCode})`] : [],
    );
    return { kind, terminalId, terminalCode, newest, weakTools, ...judge(own) };
  });
  return { period, groups: groups.sort(byNeed) };
}

export async function detailOf(
  db: Database,
  actor: Actor,
  id: string,
  query: Output<typeof forceDetail.query & {}>,
  at: Date,
): Promise<ForceDetail> {
  const period = periodOf(query, at);
  const scope = choosePlants(actor, 'force.read', query.plant);
  const terminal = await db.prisma.terminal.findUnique({ where: { id }, select: { id: true, code: true, name: true } });
  if (!terminal) throw notFound('terminal');
  const samples = await readMeasured(db, scope, { ...query, ...period, terminal: [id] });
  return {
    period,
    terminal,
    kind: query.kind,
    whole: samples.length > 0 ? judge(samples) : null,
    tools: byTool(samples),
    runs: runChart(samples.flatMap(({ newtons }) => newtons)),
    samples: samples.slice(-mostSamples),
    leftOut: Math.max(0, samples.length - mostSamples),
  };
}
