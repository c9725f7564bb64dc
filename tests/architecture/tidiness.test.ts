import { describe, expect, it } from 'vitest';
import { listFolder, readText, sourcesIn } from './source.ts';

const all = sourcesIn('apps', 'packages', 'seed', 'tests', 'scripts');
/** A test file may tell a longer story than a source. */
const limitOf = (path: string): number => (path.endsWith('.test.ts') ? 600 : 350);
/** Files beyond the limit, each with the reason why it is not split. */
const longFor: Record<string, string> = {
  'packages/contracts/src/cases.ts': 'the operations of one case side by side, each a few lines',
  'packages/contracts/src/failures.ts': 'the one contract of a report, read from top to bottom',
  'packages/contracts/src/master-data.ts': 'every kind of master data side by side, each a few lines',
};

describe('files', () => {
  it('stay below 350 lines, tests below 600, or say why not', () => {
    const long = all
      .map(({ path, text }) => [path, text.split('\n').length] as const)
      .filter(([path, lines]) => lines > limitOf(path))
      .map(([path]) => path);
    expect(long.filter((path) => !longFor[path])).toEqual([]);
  });

  it('leave nothing for later and skip nothing', () => {
    const words = ['TO' + 'DO', 'FIX' + 'ME', 'coming ' + 'soon', 'not ' + 'implemented'];
    const skipping = /\b(it|describe|test)\.(only|skip|todo|fails)\b/;
    const wrong = all.flatMap(({ path, text }) => [
      ...words.filter((word) => text.includes(word)).map((word) => `${path}: ${word}`),
      ...(skipping.test(text) ? [`${path}: ${skipping.exec(text)?.[0]}`] : []),
    ]);
    expect(wrong).toEqual([]);
  });

  it('name no folder of one machine', () => {
    const home = /(?<![\w.])\/(work|home|root|Users)\/\w/;
    expect(all.filter(({ text }) => home.test(text)).map(({ path }) => path)).toEqual([]);
  });
});

describe('one word for a feature', () => {
  const features = listFolder('apps/api/src/features');
  const contracts = listFolder('packages/contracts/src');

  it('names its contract and its folder in the API', () => {
    const withEndpoints = contracts.filter(
      (file) => /\.ts$/.test(file) && /\bendpoint\(/.test(readText(`packages/contracts/src/${file}`)),
    );
    expect(withEndpoints.length).toBeGreaterThan(5);
    expect(withEndpoints.map((file) => file.replace('.ts', '')).filter((name) => !features.includes(name))).toEqual([]);
  });

  it('names its routes', () => {
    const without = features.filter(
      (name) => !listFolder(`apps/api/src/features/${name}`).includes(`${name}.routes.ts`),
    );
    expect(without).toEqual([]);
  });

  it('has every routes file in the table of contents', () => {
    const contents = readText('apps/api/src/app.ts');
    expect(features.filter((name) => !contents.includes(`/features/${name}/${name}.routes.ts`))).toEqual([]);
  });

  it('has the same languages everywhere in the web', () => {
    const folders = listFolder('apps/web/src/features');
    const missing = folders.flatMap((name) => {
      const files = listFolder(`apps/web/src/features/${name}`);
      return files.includes('messages.en.ts') === files.includes('messages.de.ts') ? [] : [name];
    });
    expect(missing).toEqual([]);
  });
});
