/** What unknown values of a file mean: something that exists, nothing, or master data made on the spot. */

import type { Kind } from '#api/features/master-data/kind.ts';
import { customer, housing, terminal, wire } from '#api/features/master-data/kinds/parts.ts';
import { line, plant, stage, tool } from '#api/features/master-data/kinds/places.ts';
import { create } from '#api/features/master-data/write.service.ts';
import { type Actor, plantsWith } from '#api/platform/actor.ts';
import { notFound, problem, unknownReference } from '#api/platform/problems.ts';
import type { Unit } from '#api/platform/unit.ts';
import { type ImportField, importFields, type Reference } from '#contracts/import-fields.ts';
import type { ValueMeaning } from '#contracts/imports.ts';
import type { ImportJob } from '#db/generated/client.ts';
import { saveMeaning } from './imports.repository.ts';
import { perPlant } from './interpret/references.ts';
import { isWord } from './interpret/words.ts';

const kinds: Record<Reference, Kind> = { plant, line, stage, housing, terminal, wire, tool, customer };

export async function defineValue(unit: Unit, job: ImportJob, meaning: ValueMeaning, path: string): Promise<void> {
  const field = importFields[job.kind][meaning.field];
  if (!field || (field.type !== 'reference' && field.type !== 'word'))
    throw unfit(path, 'field', 'holds no words and no master data');
  const local = field.type === 'reference' && perPlant.has(field.of);
  const plantId = local ? meaning.plantId : null;
  if (local && (plantId === null || !mayImport(unit.actor, plantId))) throw notFound('plant');
  const target = await targetOf(unit, field, meaning, plantId, path);
  await saveMeaning(
    unit.tx,
    job.kind,
    job.source,
    { field: meaning.field, plantId, raw: meaning.raw, target },
    unit.at,
  );
}

async function targetOf(
  unit: Unit,
  field: ImportField,
  meaning: ValueMeaning,
  plantId: string | null,
  path: string,
): Promise<string> {
  if (meaning.as === 'blank') {
    if (field.required) throw unfit(path, 'as', 'cannot be left blank, for the field is required');
    return '';
  }
  if (field.type === 'word') {
    if (meaning.as === 'new') throw unfit(path, 'as', 'is a fixed vocabulary; choose one of its words');
    if (!isWord(field.of, meaning.target)) throw unfit(path, 'target', 'is no word of this vocabulary');
    return meaning.target;
  }
  const kind = kinds[(field as { of: Reference }).of];
  if (meaning.as === 'existing') return existing(unit, kind, meaning.target, plantId, path);
  const input = kind.contract.Input.safeParse(plantId ? { ...meaning.input, plantId } : meaning.input);
  if (!input.success) {
    const errors = input.error.issues.map((issue) => ({
      path: `${path}/input/${issue.path.join('/')}`,
      message: issue.message,
    }));
    throw problem(
      'invalid_request',
      `${errors.map((it) => `${it.path}: ${it.message}`).join('; ')}. Nothing was changed; mend these and send again.`,
      errors,
    );
  }
  return (await create(unit, kind, input.data)).id;
}

async function existing(unit: Unit, kind: Kind, id: string, plantId: string | null, path: string): Promise<string> {
  const found = /^[0-9a-f-]{36}$/i.test(id)
    ? await kind.table(unit.tx).findMany({ where: { id, ...(plantId && { plantId }) } })
    : [];
  if (found.length === 0 || (kind === plant && !mayImport(unit.actor, id)))
    throw unknownReference(`${path.replace('body/', '')}/target`, kind.contract.entity);
  return id;
}

function mayImport(actor: Actor, plantId: string): boolean {
  const scope = plantsWith(actor, 'imports.run');
  return scope === 'all' || scope.includes(plantId);
}

const unfit = (path: string, name: string, message: string) =>
  problem('not_consistent', `${path}/${name} ${message}. Nothing was changed.`, [{ path: `${path}/${name}`, message }]);
