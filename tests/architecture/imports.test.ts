import { dirname, join } from 'node:path/posix';
import { describe, expect, it } from 'vitest';
import { importsIn, isTest, type SourceFile, sourcesIn } from './source.ts';

const folders = {
  contracts: 'packages/contracts',
  analysis: 'packages/analysis',
  db: 'packages/db',
  api: 'apps/api',
  web: 'apps/web',
} as const;
type Part = keyof typeof folders;

/** web → contracts ← api → analysis; api → db; the start-up of the API, and nothing else of it, knows the demo. */
const allowed: Record<Part, readonly Part[]> = {
  contracts: [],
  analysis: [],
  db: [],
  api: ['contracts', 'analysis', 'db'],
  web: ['contracts'],
};

const ours = (from: string): string | null => /^#(\w+)\//.exec(from)?.[1] ?? null;
const code = (part: Part): SourceFile[] => sourcesIn(folders[part]).filter((file) => !isTest(file));

describe('imports', () => {
  it('are read from the source, however they are written', () => {
    const text = `import { a } from '#db/a.ts';\nimport type {\n  B,\n} from './b.ts';\nimport './c.css';\nexport { d } from '#api/d.ts';\nconst e = await import('./e.ts');`;
    expect(importsIn(text).sort()).toEqual(['#api/d.ts', '#db/a.ts', './b.ts', './c.css', './e.ts']);
    expect(sourcesIn('apps/api').flatMap(({ imports }) => imports).length).toBeGreaterThan(200);
  });

  it.each(Object.keys(folders) as Part[])('of %s go one way', (part) => {
    const wrong = code(part).flatMap(({ path, imports }) =>
      imports
        .filter((from) => {
          const other = ours(from);
          if (other === 'seed' && /^apps\/api\/src\/[\w-]+\.ts$/.test(path)) return false;
          return other !== null && other !== part && !allowed[part].includes(other as Part);
        })
        .map((from) => `${path} imports ${from}`),
    );
    expect(wrong).toEqual([]);
  });

  it('stay inside their package unless they say whose file it is', () => {
    const wrong = (Object.keys(folders) as Part[]).flatMap((part) =>
      code(part).flatMap(({ path, imports }) =>
        imports
          .filter((from) => from.startsWith('.') && !join(dirname(path), from).startsWith(`${folders[part]}/`))
          .map((from) => `${path} imports ${from}`),
      ),
    );
    expect(wrong).toEqual([]);
  });

  it('name the file with its ending', () => {
    const wrong = (Object.keys(folders) as Part[]).flatMap((part) =>
      code(part).flatMap(({ path, imports }) =>
        imports
          .filter((from) => (from.startsWith('.') || ours(from)) && !/\.(tsx?|css|svg|json|m?js)(\?\w+)?$/.test(from))
          .map((from) => `${path} imports ${from}`),
      ),
    );
    expect(wrong).toEqual([]);
  });

  it('keep contracts and analyses free of machines', () => {
    const wrong = [...code('contracts'), ...code('analysis')].flatMap(({ path, imports }) =>
      imports.filter((from) => /^(node:|pg|fastify|react|@prisma)/.test(from)).map((from) => `${path} imports ${from}`),
    );
    expect(wrong).toEqual([]);
  });
});

describe('features', () => {
  const featureOf = (path: string) => /\/features\/([\w-]+)\//.exec(path)?.[1];
  const target = (path: string, from: string, alias: string) =>
    from.startsWith('.') ? join(dirname(path), from) : from.replace(alias, '/');

  it('of the API use each other through services, never through repositories or queries', () => {
    const wrong = sourcesIn('apps/api/src/features').flatMap(({ path, imports }) =>
      imports
        .map((from) => target(path, from, '#api/'))
        .filter(
          (to) => featureOf(to) && featureOf(to) !== featureOf(path) && /\.(repository|queries|routes)\.ts$/.test(to),
        )
        .map((to) => `${path} reaches into ${to}`),
    );
    expect(wrong).toEqual([]);
  });

  it('of the web are joined by the app only', () => {
    const wrong = sourcesIn('apps/web/src/ui').flatMap(({ path, imports }) =>
      imports.filter((from) => featureOf(target(path, from, '#web/'))).map((from) => `${path} imports ${from}`),
    );
    expect(wrong).toEqual([]);
  });

  it('have no barrels', () => {
    const barrels = sourcesIn('apps', 'packages').filter(
      ({ path, text }) => /\/index\.tsx?$/.test(path) || /^export \* from/m.test(text),
    );
    expect(barrels.map(({ path }) => path)).toEqual([]);
  });

  it('hold no SQL statement in routes and rules', () => {
    const wrong = sourcesIn('apps/api/src/features')
      .filter(({ path }) => /\.(routes|rules)\.ts$/.test(path))
      .filter(({ text }) => /\bsql`\s*(select|insert|update|delete|with)\b/i.test(text))
      .map(({ path }) => path);
    expect(wrong).toEqual([]);
  });
});
