/** Complaints of the demo, made of reports that customers sent in: old ones answered and closed, young ones with clocks that run. */
import type pg from 'pg';
import { reckonClock } from '#analysis/calendar/reply-clock.ts';
import { addWorkingMinutes, type WorkingCalendar } from '#analysis/calendar/working-time.ts';
import { type ReplyTimes, replies } from '#contracts/reply-times.ts';
import { yearOf } from './calendar.ts';
import { replyTimesOf } from './group/customers.ts';
import { plants } from './group/plants.ts';
import { type DemoCalendar, demoCalendar } from './plant-calendars.ts';
import { oversizeProbe } from './scenario/oversize-probe.ts';
import { instant, type Row, type Table } from './tables/row.ts';
import type { World } from './world.ts';

/** Of the youngest so many, the clocks still run. */
const open = 5;
const each = 5;
const day = 86_400_000;

interface Source {
  id: string;
  plant: string;
  customer: string;
  housing_id: string | null;
  terminal_id: string | null;
  found_on: string;
  built_on: string | null;
  effect: string | null;
  customer_ref: string | null;
  lot: string | null;
  quantity: number;
  safety: boolean;
}

/** Reports of customers, so many a plant: those of the planted probe first, then spread over the months. */
const chosen = `select * from (
    select f.id, p.code as plant, u.code as customer, f.housing_id, f.terminal_id, f.found_on::text, f.built_on::text, f.effect::text,
      f.customer_ref, f.reel_lot as lot, f.quantity_found as quantity, f.safety,
      row_number() over (partition by p.code, width_bucket(f.found_on, array(
        select ($1::date - g * 110) from generate_series(4, 0, -1) g)) order by f.fixture_position is not distinct from $2 desc, f.found_on desc, f.id) as place
    from failure f join plant p on p.id = f.plant_id join customer u on u.id = f.customer_id
    where f.source = 'customer' and f.found_on <= $1::date - 2) s
  where place = 1 order by found_on desc, id`;

const words: Record<string, string> = {
  open_circuit: 'No contact at one terminal after assembly',
  intermittent: 'Contact comes and goes when the harness is moved',
  high_resistance: 'Voltage drop too high at one contact',
  heating: 'Connector becomes warm in operation',
  mating_blocked: 'Connector cannot be mated, a terminal stands out',
};

interface Planned {
  source: Source;
  received: number;
  closed: boolean;
  number: string;
  year: number;
}

/** When the customer's word came: on the day after it was found; the youngest close enough to the last day for their clocks to run. */
function plan(world: World, sources: readonly Source[], calendars: ReadonlyMap<string, DemoCalendar>): Planned[] {
  const last = (world.anchor + 1) * day;
  const received = sources.map((source, place) => {
    const afterFound = Date.parse(`${source.found_on}T00:00:00Z`) + day;
    return place < open ? Math.max(afterFound, last - [2, 11, 5, 3, 8][place]! * day) : afterFound;
  });
  const counts = new Map<string, number>();
  return sources
    .map((source, place) => {
      const begins = addWorkingMinutes(
        new Date(received[place]!),
        95 + 37 * place,
        calendars.get(source.plant)!.working,
      );
      return { source, received: begins.getTime(), closed: place >= open };
    })
    .sort((one, other) => one.received - other.received)
    .map((it) => {
      const year = yearOf(Math.floor(it.received / day));
      const key = `${it.source.plant} ${year}`;
      counts.set(key, (counts.get(key) ?? 0) + 1);
      const running = String(counts.get(key)).padStart(4, '0');
      return { ...it, year, number: `${it.source.plant}-C${String(year % 100).padStart(2, '0')}-${running}` };
    });
}

const sent: Record<keyof ReplyTimes, string> = {
  first_reply: 'Receipt confirmed; stock is being checked and the parts were asked for.',
  containment: 'Stock sorted, transit stopped, clean point named.',
  cause: 'Cause with its evidence and the stages that missed it.',
  corrective_action: 'Corrective action with the date and how its effect is shown.',
};

function clockRows(world: World, it: Planned, working: WorkingCalendar, owner: string) {
  const { id } = world;
  const now = (world.anchor + 1) * day;
  const times = replyTimesOf(it.source.customer);
  const clocks: Row[] = [];
  const events: Row[] = [];
  replies.forEach((kind, place) => {
    const started = new Date(it.received);
    const due = reckonClock(times[kind], started, [], working);
    const dice = world.dice(`clock ${it.number} ${kind}`);
    const late = dice.chance(0.12) ? 1.2 : dice.whole(30, 90) / 100;
    const answered = addWorkingMinutes(
      started,
      Math.round(((due.dueAt.getTime() - it.received) / 60_000) * late * 0.3),
      working,
    );
    const done = it.closed || (place === 0 && answered.getTime() < now);
    const clockId = id(`clock ${it.number} ${kind}`, it.received);
    clocks.push({
      id: clockId,
      plant_id: id(`plant ${it.source.plant}`),
      complaint_id: id(`complaint ${it.number}`, it.received),
      kind,
      amount: times[kind].amount,
      unit: times[kind].unit,
      owner_id: owner,
      started_at: instant(it.received),
      due_at: due.dueAt.toISOString(),
      short_at: due.shortAt.toISOString(),
      urgent_at: due.urgentAt.toISOString(),
      answered_at: done ? answered.toISOString() : null,
      answered_by: done ? owner : null,
      sent: done ? sent[kind] : null,
    });
    if (done)
      events.push({
        id: id(`clock event ${it.number} ${kind}`, answered.getTime()),
        plant_id: id(`plant ${it.source.plant}`),
        clock_id: clockId,
        step: 'answered',
        at: answered.toISOString(),
        actor: `Quality engineer ${plants.find(({ code }) => code === it.source.plant)!.name}`,
        note: sent[kind],
      });
  });
  return { clocks, events };
}

/** Rows for a demo whose reports are loaded already. */
export async function makeComplaints(client: pg.Client, world: World): Promise<Table[]> {
  const { id } = world;
  const calendars = new Map(plants.map((plant) => [plant.code as string, demoCalendar(plant, world)]));
  const anchor = new Date(world.anchor * day).toISOString().slice(0, 10);
  const { rows } = await client.query<Source>(chosen, [anchor, oversizeProbe.position]);
  const planned = plan(world, rows.slice(0, plants.length * each), calendars);
  const personOf = (role: string, plant: string) => id(`person ${role}.${plant.toLowerCase()}@example.test`);
  const clocks = planned.map((it) =>
    clockRows(world, it, calendars.get(it.source.plant)!.working, personOf('engineer', it.source.plant)),
  );
  const complaints = planned.map(({ source, received, closed, number }): Row => {
    const owner = personOf('engineer', source.plant);
    const manager = personOf('manager', source.plant);
    const end = Math.min(received + 40 * day, (world.anchor + 1) * day);
    return {
      id: id(`complaint ${number}`, received),
      plant_id: id(`plant ${source.plant}`),
      number,
      customer_id: id(`customer ${source.customer}`),
      customer_ref: source.customer_ref,
      title: words[source.effect ?? ''] ?? 'Terminal backs out of its cavity',
      housing_id: source.housing_id,
      terminal_id: source.terminal_id,
      quantity: source.quantity,
      lots: source.lot ? [source.lot] : [],
      received_at: instant(received),
      built_on: source.built_on,
      found_on: source.found_on,
      effect: source.effect,
      safety: source.safety,
      safety_seen_at: source.safety ? instant(received + 30 * 60_000) : null,
      safety_seen_by: source.safety ? manager : null,
      owner_id: owner,
      created_at: instant(received + 10 * 60_000),
      created_by: owner,
      closed_at: closed ? instant(end) : null,
      closed_by: closed ? owner : null,
      closing_note: closed ? 'All replies sent; the customer has closed it.' : null,
    };
  });
  const counters = Map.groupBy(planned, ({ source, year }) => `${source.plant} ${year}`);
  return [
    ...calendarTables(world, calendars, personOf),
    { name: 'complaint', rows: complaints },
    { name: 'complaint_clock', rows: clocks.flatMap((it) => it.clocks) },
    { name: 'complaint_clock_event', rows: clocks.flatMap((it) => it.events) },
    {
      name: 'complaint_failure',
      rows: planned.map(({ source, received, number }) => ({
        complaint_id: id(`complaint ${number}`, received),
        plant_id: id(`plant ${source.plant}`),
        failure_id: source.id,
        linked_at: instant(received + 20 * 60_000),
        linked_by: personOf('engineer', source.plant),
      })),
    },
    {
      name: 'complaint_counter',
      rows: [...counters.values()].map((all) => ({
        plant_id: id(`plant ${all[0]!.source.plant}`),
        year: all[0]!.year,
        last: all.length,
      })),
    },
  ].filter((table) => table.rows.length > 0);
}

const calendarTables = (
  { id }: World,
  calendars: ReadonlyMap<string, DemoCalendar>,
  personOf: (role: string, plant: string) => string,
): Table[] => [
  {
    name: 'plant_calendar',
    rows: [...calendars].map(([plant, { working }]) => ({
      plant_id: id(`plant ${plant}`),
      hours: JSON.stringify(working.hours),
      version: 2,
    })),
  },
  {
    name: 'plant_holiday',
    rows: [...calendars].flatMap(([plant, { working }]) =>
      [...working.holidays].map((holiday) => ({ plant_id: id(`plant ${plant}`), day: holiday, name: 'Plant closed' })),
    ),
  },
  {
    name: 'product_safety_duty',
    rows: [...calendars.keys()].map((plant) => ({
      plant_id: id(`plant ${plant}`),
      person_id: personOf('manager', plant),
      version: 2,
    })),
  },
];
