import { describe, expect, it } from 'vitest';
import { importStates } from '#contracts/imports.ts';
import { roles } from '#contracts/permissions.ts';
import * as taxonomy from '#contracts/taxonomy.ts';
import { listFolder, readText } from './source.ts';

const sql = listFolder('prisma/migrations')
  .filter((name) => /^\d/.test(name))
  .map((name) => readText(`prisma/migrations/${name}/migration.sql`))
  .join('\n');
const enums = new Map(
  [...sql.matchAll(/CREATE TYPE (\w+) AS ENUM \(([^)]*)\)/gi)].map(([, name, words]) => [
    name as string,
    [...(words as string).matchAll(/'([^']*)'/g)].map(([, word]) => word),
  ]),
);
for (const [, name, word] of sql.matchAll(/ALTER TYPE (\w+) ADD VALUE '([^']*)'/gi))
  enums.get(name as string)?.push(word);

const vocabularies: Record<string, readonly string[]> = {
  role: roles,
  cause: taxonomy.causes,
  source: taxonomy.sources,
  effect: taxonomy.effects,
  disposition: taxonomy.dispositions,
  lock_state: taxonomy.lockStates,
  retention_style: taxonomy.retentionStyles,
  secondary_lock_kind: taxonomy.secondaryLockKinds,
  tool_kind: taxonomy.toolKinds,
  cost_category: taxonomy.costCategories,
  cost_basis: taxonomy.costBases,
  cost_rate_kind: taxonomy.costRateKinds,
  import_kind: taxonomy.importKinds,
  import_state: importStates,
  force_kind: taxonomy.forceKinds,
  force_unit: taxonomy.forceUnits,
};

describe('the words of the database', () => {
  it.each(Object.entries(vocabularies))('of %s are those of the contract, in their order', (name, words) => {
    expect(enums.get(name)).toEqual([...words]);
  });

  it('are ten stages', () => {
    expect(taxonomy.stages).toHaveLength(10);
    expect(sql).toMatch(/found smallint NOT NULL CHECK \(found BETWEEN 1 AND 10\)/);
  });

  it('say of each cause the first stage able to see it, as the taxonomy does', () => {
    const values = /INSERT INTO cause_gate VALUES ([^;]+);/.exec(sql)?.[1] ?? '';
    const gates = Object.fromEntries(
      [...values.matchAll(/\('(\w+)', (\d+|NULL)\)/g)].map(([, cause, gate]) => [
        cause,
        gate === 'NULL' ? null : taxonomy.stageOf(Number(gate)),
      ]),
    );
    const expected = Object.entries(taxonomy.causeTaxonomy).map(([cause, { visibleFrom }]) => [cause, visibleFrom]);
    expect(gates).toEqual(Object.fromEntries(expected));
  });
});
