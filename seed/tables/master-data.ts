import { customers, replyTimesOf } from '../group/customers.ts';
import { lineCodes, lineNames } from '../group/lines.ts';
import { housings, terminals, wires } from '../group/parts.ts';
import { plants } from '../group/plants.ts';
import { stagePlans } from '../group/stages.ts';
import { toolTypeOf } from '../group/tools.ts';
import type { World } from '../world.ts';
import type { Table } from './row.ts';

const live = { retired_at: null, version: 1 };

/** Plants with their lines and stages; parts; customers. */
export function masterData({ id }: World): Table[] {
  return [
    {
      name: 'plant',
      rows: plants.map(({ code, name, zone, currency, weekStart, locale, paper }) => ({
        id: id(`plant ${code}`),
        ...{ code, name, zone, currency, week_start: weekStart, locale, paper },
        ...live,
      })),
    },
    {
      name: 'line',
      rows: plants.flatMap(({ code: plant }) =>
        lineCodes.map((code) => ({
          id: id(`line ${plant} ${code}`),
          plant_id: id(`plant ${plant}`),
          code,
          name: `${lineNames[plant]} ${code[1]}`,
          ...live,
        })),
      ),
    },
    {
      name: 'stage',
      rows: plants.flatMap(({ code: plant }) =>
        stagePlans[plant].map(([code, name, common], index) => ({
          id: id(`stage ${plant} ${code}`),
          plant_id: id(`plant ${plant}`),
          ...{ code, name, common, position: index + 1 },
          ...live,
        })),
      ),
    },
    {
      name: 'housing',
      rows: housings.map(({ code, name, rows, columns, missing, style, lock, safety }) => ({
        id: id(`housing ${code}`),
        ...{ code, name, rows, columns, missing_cavities: missing },
        ...{ retention_style: style, secondary_lock: lock, safety_relevant: safety },
        ...live,
      })),
    },
    {
      name: 'terminal',
      rows: terminals.map(({ code, name, wireMm2, minRetentionN }) => ({
        id: id(`terminal ${code}`),
        ...{ code, name, wire_min_mm2: wireMm2[0], wire_max_mm2: wireMm2[1], min_retention_n: minRetentionN },
        ...live,
      })),
    },
    {
      name: 'terminal_tool_type',
      rows: terminals.map(({ code, size }) => ({ terminal_id: id(`terminal ${code}`), tool_type: toolTypeOf(size) })),
    },
    {
      name: 'wire',
      rows: wires.map(([code, name, section, insulation]) => ({
        id: id(`wire ${code}`),
        ...{ code, name, section_mm2: section, insulation_mm: insulation },
        ...live,
      })),
    },
    {
      name: 'customer',
      rows: customers.map(({ code, name, locale, paper }) => ({
        id: id(`customer ${code}`),
        code,
        name,
        locale,
        paper,
        reply_times: JSON.stringify(replyTimesOf(code)),
        ...live,
      })),
    },
  ];
}
