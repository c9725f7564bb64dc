/** Steps of an import as a test takes them through HTTP. */
import { setTimeout as sleep } from 'node:timers/promises';
import type { Import, ImportState, Mapping } from '#contracts/imports.ts';
import type { Answer, Asker } from '#tests/support/app.ts';

export function form(content: string | Buffer, fileName = 'list.csv', field = 'file') {
  const boundary = 'x-form-boundary';
  const head = `--${boundary}\r\nContent-Disposition: form-data; name="${field}"; filename="${fileName}"\r\nContent-Type: application/octet-stream\r\n\r\n`;
  return {
    payload: Buffer.concat([Buffer.from(head), Buffer.from(content), Buffer.from(`\r\n--${boundary}--\r\n`)]),
    headers: { 'content-type': `multipart/form-data; boundary=${boundary}` },
  };
}

export const upload = (
  asker: Asker,
  content: string | Buffer,
  { kind = 'failures', source = 'line list', headers = {} as Record<string, string> } = {},
): Promise<Answer> => {
  const sent = form(content);
  return asker.post(`/api/v1/imports?kind=${kind}&source=${encodeURIComponent(source)}`, '', {
    payload: sent.payload,
    headers: { ...sent.headers, ...headers },
  });
};

export async function map(
  asker: Asker,
  job: Import,
  fields: Record<string, string | null>,
  more: Partial<Mapping> = {},
): Promise<Import> {
  const columns = job.columns.map(({ header, suggestion }) => (header in fields ? fields[header] : suggestion));
  const answer = await asker.put(
    `/api/v1/imports/${job.id}/mapping`,
    { ...job.mapping, columns, ...more },
    job.version,
  );
  if (answer.status !== 200) throw new Error(JSON.stringify(answer.body));
  return answer.body;
}

const act = (asker: Asker, job: Import, step: string, body: unknown = {}): Promise<Answer> =>
  asker.post(`/api/v1/imports/${job.id}/${step}`, body, {
    headers: { 'content-type': 'application/json', 'if-match': `"${job.version}"` },
  });

export async function settled(asker: Asker, id: string): Promise<Import> {
  for (;;) {
    const { body } = await asker.get(`/api/v1/imports/${id}`);
    if (!(['checking', 'committing'] as ImportState[]).includes(body.state)) return body;
    await sleep(20);
  }
}

export async function check(asker: Asker, job: Import): Promise<Import> {
  const answer = await act(asker, job, 'check');
  if (answer.status !== 202) throw new Error(JSON.stringify(answer.body));
  return settled(asker, job.id);
}
export const askCommit = (asker: Asker, job: Import, skipRefused = false) => act(asker, job, 'commit', { skipRefused });
export async function commit(asker: Asker, job: Import, skipRefused = false): Promise<Import> {
  const answer = await askCommit(asker, job, skipRefused);
  if (answer.status !== 202) throw new Error(JSON.stringify(answer.body));
  return settled(asker, job.id);
}
