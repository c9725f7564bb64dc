/** `npm run bench`: ratios against DuckDB, COPY and bare Fastify + pg, measured in one run on one machine. */
import { mkdtemp, rm } from 'node:fs/promises';
import { cpus, tmpdir, totalmem } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { withClient } from '#db/connect.ts';
import { destroyEmbedded } from '#db/embedded.ts';
import { measureAnalyses, measureWeekPage } from './analyses.bench.ts';
import { openFilled, signIn } from './database.ts';
import { openDuck } from './duck.ts';
import { measureCopy, measureImport } from './import.bench.ts';
import { writeImportFile } from './import-file.ts';
import { spread } from './measure.ts';
import { questionsOf } from './questions.ts';
import { compareRoutes } from './routes.bench.ts';
import { memoryOf, startServer } from './server.ts';
import { confirmedCases, learnCases, measureSuggestion } from './suggestion.bench.ts';
import { print, type Row, shown } from './table.ts';

const { values } = parseArgs({
  options: {
    rows: { type: 'string', default: '1000000' },
    rounds: { type: 'string', default: '9' },
    folder: { type: 'string' },
    'import-rows': { type: 'string', default: '200000' },
    only: { type: 'string', default: 'analyses,week,review,routes,suggestion,import' },
  },
});
const rows = Number(values.rows);
const rounds = Number(values.rounds);
const parts = new Set(values.only.split(','));
const say = (line: string) => console.log(line);
const duckThreads = Math.min(2, cpus().length);

const folder = values.folder ?? (await mkdtemp(join(tmpdir(), 'escape-ledger-bench-')));
const filled = await openFilled(folder, rows, say);
const cookie = await signIn(filled.url);
const table: Row[] = [];
const server = await startServer(join(import.meta.dirname, '../../apps/api/src/server.ts'), {
  DATABASE_URL: filled.url,
  DATA_DIR: join(folder, 'app'),
  SEED: 'none',
});

async function ask(path: string) {
  const answer = await fetch(server.url + path, { headers: { cookie } });
  const body = await answer.json();
  if (!answer.ok) throw new Error(`${path}: ${answer.status} ${JSON.stringify(body)}`);
  return body as { period: { from: string; to: string } };
}

say(
  `${rows} reports; ${cpus().length} cores, ${Math.round(totalmem() / 2 ** 30)} GB; ${rounds} rounds, median (lowest–highest)`,
);
try {
  if (parts.has('analyses')) {
    const duck = await openDuck(filled.files, duckThreads);
    for (const { name, ours, duck: theirs, ratio } of await measureAnalyses(
      questionsOf(filled.today, filled.plant),
      ask,
      duck,
      rounds,
    ))
      table.push({
        what: name,
        ours: shown(ours, 'ms'),
        theirs: shown(theirs, 'ms'),
        ratio: `${ratio.toFixed(2)} ×`,
        goal: '≤ 4 × DuckDB',
        met: ratio <= 4,
      });
    duck.closeSync();
  }
  if (parts.has('week')) {
    const week = await measureWeekPage(
      ['/api/v1/session', '/api/v1/week', '/api/v1/plants?limit=200', '/api/v1/organisation'],
      ask,
      40,
    );
    table.push({
      what: 'calls of the week page, p95',
      ours: `${week.p95.toFixed(0)} ms`,
      theirs: '',
      ratio: shown(week, 'ms'),
      goal: '< 300 ms',
      met: week.p95 < 300,
    });
  }
  if (parts.has('review')) {
    const review = await measureWeekPage(['/api/v1/reviews/week?live=true'], ask, rounds);
    table.push({
      what: 'the whole weekly review of the group, counted anew',
      ours: shown(review, 'ms'),
      theirs: '',
      ratio: '',
      goal: 'median < 1000 ms',
      met: review.median < 1000,
    });
  }
  if (parts.has('routes')) table.push(...(await routes()));
  if (parts.has('suggestion')) table.push(await suggesting());
  if (parts.has('import')) table.push(...(await importing(Number(values['import-rows']))));
  table.push({
    what: 'memory of the app after all of it',
    ours: `${(await server.memory()).toFixed(0)} MB`,
    theirs: `bench ${(await memoryOf(process.pid)).toFixed(0)} MB`,
    ratio: '',
    goal: '',
    met: null,
  });
} finally {
  await server.stop();
  await filled.stop();
  if (!values.folder) {
    await destroyEmbedded(join(folder, 'data'));
    await rm(folder, { recursive: true, force: true });
  }
}
print(table);

async function routes(): Promise<Row[]> {
  const bare = await startServer(join(import.meta.dirname, 'bare.ts'), { DATABASE_URL: filled.url });
  const body = JSON.stringify({
    plantId: filled.plant,
    foundOn: filled.today,
    found: 'insertion',
    source: 'line',
    quantityFound: 1,
  });
  const bareBody = JSON.stringify({ plantId: filled.plant, foundOn: filled.today, found: 4 });
  const json = { 'content-type': 'application/json' };
  try {
    const read = await compareRoutes(
      {
        url: server.url,
        requests: filled.someReports.map((id) => ({ path: `/api/v1/failures/${id}` })),
        headers: { cookie },
      },
      { url: bare.url, requests: filled.someReports.map((id) => ({ path: `/failures/${id}` })) },
      3,
    );
    const write = await compareRoutes(
      { url: server.url, requests: [{ method: 'POST', path: '/api/v1/failures', body }], headers: { ...json, cookie } },
      { url: bare.url, requests: [{ method: 'POST', path: '/failures', body: bareBody }], headers: json },
      3,
    );
    return [
      { what: 'read one report', ...read, goal: 0.4 },
      { what: 'record one report (numbered, checked, audited)', ...write, goal: null },
    ].map(({ what, ours, bare: theirs, goal }) => {
      const ratio = ours.median / theirs.median;
      return {
        what,
        ours: shown(ours, '/s'),
        theirs: shown(theirs, '/s'),
        ratio: `${Math.round(ratio * 100)} %`,
        goal: goal === null ? '' : `≥ ${goal * 100} % of bare Fastify + pg`,
        met: goal === null ? null : ratio >= goal,
      };
    });
  } finally {
    await bare.stop();
  }
}

async function suggesting(): Promise<Row> {
  const cases = await withClient(filled.url, learnCases);
  if (cases < Math.min(confirmedCases, rows / 2)) throw new Error(`only ${cases} cases were learned from`);
  const { evidence, report } = await measureSuggestion(ask, filled.someReports.slice(0, 220));
  return {
    what: `suggestion for one report, ${cases} confirmed cases`,
    ours: shown(evidence, 'ms'),
    theirs: `the report alone ${shown(report, 'ms')}`,
    ratio: `${(evidence.median / report.median).toFixed(2)} ×`,
    goal: 'median < 10 ms',
    met: evidence.median < 10,
  };
}

async function importing(count: number): Promise<Row[]> {
  const file = join(folder, 'import.csv');
  return withClient(filled.url, async (client) => {
    await writeImportFile(client, filled.files.reports, file, count);
    const times = { failure: [] as number[], 'bare table': [] as number[] };
    for (let round = 0; round < 3; round++)
      for (const into of ['failure', 'bare table'] as const)
        times[into].push(await measureCopy(client, filled.files.reports, count, into));
    await client.query('vacuum analyze failure');
    const { commit } = await measureImport({ url: server.url, cookie }, file, count);
    const rate = (time: number) => (1000 * count) / time;
    return (['failure', 'bare table'] as const).map((into) => {
      const copied = spread(times[into].map(rate));
      const ratio = rate(commit) / copied.median;
      return {
        what: `import of ${count} reports against COPY into ${into === 'failure' ? 'the same table' : 'a bare table'}`,
        ours: `${rate(commit).toFixed(0)} rows/s`,
        theirs: shown(copied, 'rows/s'),
        ratio: `${Math.round(ratio * 100)} %`,
        goal: into === 'failure' ? '≥ 25 % of COPY' : '',
        met: into === 'failure' ? ratio >= 0.25 : null,
      };
    });
  });
}
