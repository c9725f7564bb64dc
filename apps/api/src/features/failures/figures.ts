import type { Tx } from '#db/client.ts';
import { type Sql, sql, txExecute } from '#db/sql.ts';

/**
 * Brings the derived figures of the reports that `where` selects (alias `f`) up to date: standard cost, first gate able to
 * see the fault, cost there, gates passed. To be called in the transaction of whatever they depend on: a report, an import,
 * a plant's stages or standard costs. Returns how many reports changed.
 */
export const refreshFigures = (tx: Tx, where: Sql): Promise<number> =>
  txExecute(
    tx,
    sql`update failure f
      set standard_minor = g.standard_minor, gate = g.gate, gate_minor = g.gate_minor, gates_passed = g.gates_passed
      from failure_figures g
      where g.id = f.id and g.plant_id = f.plant_id and (${where})
        and (f.standard_minor, f.gate, f.gate_minor, f.gates_passed)
          is distinct from (g.standard_minor, g.gate, g.gate_minor, g.gates_passed)`,
  );
