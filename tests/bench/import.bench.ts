import { openAsBlob } from 'node:fs';
import { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import type pg from 'pg';
import { from } from 'pg-copy-streams';
import type { Import } from '#contracts/imports.ts';
import { firstLines, importColumns } from './import-file.ts';
import { milliseconds } from './measure.ts';
import { reportColumns } from './rows.ts';

export interface Service {
  url: string;
  cookie: string;
}

async function send(service: Service, path: string, init: RequestInit = {}): Promise<Import> {
  const answer = await fetch(service.url + path, { ...init, headers: { cookie: service.cookie, ...init.headers } });
  const body = await answer.json();
  if (!answer.ok) throw new Error(`${path}: ${answer.status} ${JSON.stringify(body)}`);
  return body as Import;
}
const change = (service: Service, { id, version }: Import, step: string, method: string, body?: unknown) =>
  send(service, `/api/v1/imports/${id}/${step}`, {
    method,
    headers: { 'if-match': `"${version}"`, ...(body !== undefined && { 'content-type': 'application/json' }) },
    ...(body !== undefined && { body: JSON.stringify(body) }),
  });

async function until(service: Service, { id }: Import, state: Import['state']): Promise<Import> {
  for (;;) {
    const now = await send(service, `/api/v1/imports/${id}`);
    if (now.state === state) return now;
    if (['failed', 'cancelled', 'interrupted'].includes(now.state))
      throw new Error(`The import ended as ${now.state}: ${JSON.stringify(now.trouble)}`);
    await new Promise((later) => setTimeout(later, 50));
  }
}

/** Milliseconds of the import itself, from the word to import until it is committed; the dry run went before. */
export async function measureImport(
  service: Service,
  file: string,
  rows: number,
): Promise<{ check: number; commit: number }> {
  const form = new FormData();
  form.append('file', await openAsBlob(file), 'reports.csv');
  const uploaded = await send(service, '/api/v1/imports?kind=failures&source=Bench', { method: 'POST', body: form });
  let step = await change(service, uploaded, 'mapping', 'PUT', { columns: importColumns });
  const check = await milliseconds(async () => {
    await change(service, step, 'check', 'POST');
    step = await until(service, step, 'checked');
  });
  if (step.outcome?.added !== rows) throw new Error(`The dry run would add ${JSON.stringify(step.outcome)}`);
  const commit = await milliseconds(async () => {
    await change(service, step, 'commit', 'POST', { skipRefused: false });
    await until(service, step, 'committed');
  });
  return { check, commit };
}

/**
 * Milliseconds of COPY of the same reports: into the table itself with its indexes and roll-ups, or into one of the same
 * columns without any. Both are undone.
 */
export async function measureCopy(
  client: pg.ClientBase,
  source: string,
  rows: number,
  into: 'failure' | 'bare table',
): Promise<number> {
  await client.query('begin');
  try {
    if (into === 'bare table') await client.query('create table copied (like failure including defaults)');
    const target = into === 'failure' ? 'failure' : 'copied';
    const lines = Readable.from(firstLines(source, rows));
    return await milliseconds(() =>
      pipeline(lines, client.query(from(`copy ${target} (${reportColumns}) from stdin`))),
    );
  } finally {
    await client.query('rollback');
  }
}
