import { describe, expect, it } from 'vitest';
import { byFolder } from './by-folder.ts';

type Words = { [key: string]: string | Words };

const catalogues = (locale: 'en' | 'de') =>
  byFolder(
    locale === 'en'
      ? import.meta.glob<Words>(['/apps/web/src/**/messages.en.ts'], { eager: true, import: 'messages' })
      : import.meta.glob<Words>(['/apps/web/src/**/messages.de.ts'], { eager: true, import: 'messages' }),
  );
const sources = import.meta.glob<string>(['/apps/web/src/**/*.{ts,tsx}', '!**/*.test.ts', '!**/messages.*.ts'], {
  eager: true,
  query: '?raw',
  import: 'default',
});

const flat = (words: Words, before = ''): [string, string][] =>
  Object.entries(words).flatMap(([key, value]) =>
    typeof value === 'string' ? [[before + key, value]] : flat(value, `${before}${key}.`),
  );
const holes = (text: string): string[] => [...text.matchAll(/\{\{(\w+)\}\}/g)].map(([, name]) => name ?? '').sort();

/** Every key that a source names in quotes, or as a template such as `gaps.${kind}`. */
const namedIn = (texts: readonly string[]): ((key: string) => boolean) => {
  const quoted = new Set(texts.flatMap((text) => [...text.matchAll(/['"]([\w.]+)['"]/g)].map(([, key]) => key)));
  const templates = texts
    .flatMap((text) => [...text.matchAll(/`([a-zA-Z]\w*\.[^`\s]*\$\{[^`]*)`/g)].map(([, body]) => body ?? ''))
    .map((body) => new RegExp(`^${body.replace(/\$\{[^}]*\}/g, '[\\w.-]+').replace(/\.(?!\])/g, '\\.')}$`));
  return (key) => quoted.has(key) || templates.some((template) => template.test(key));
};

const english = catalogues('en');
const german = catalogues('de');

it('every folder with English messages has German ones', () => {
  expect(Object.keys(english).length).toBeGreaterThan(4);
  expect(Object.keys(german).sort()).toEqual(Object.keys(english).sort());
});

describe.each(Object.keys(english))('messages of %s', (folder) => {
  const en = flat(english[folder] ?? {});
  const de = new Map(flat(german[folder] ?? {}));

  it('have the same keys, none empty, with the same places to fill', () => {
    expect([...de.keys()].sort()).toEqual(en.map(([key]) => key).sort());
    expect([...en, ...de].filter(([, text]) => text.trim() === '')).toEqual([]);
    expect(en.filter(([key, text]) => String(holes(text)) !== String(holes(de.get(key) ?? '')))).toEqual([]);
  });

  it('are all used', () => {
    const own = Object.entries(sources).filter(([path]) => path.includes(`/${folder}/`) || folder === 'ui');
    const named = namedIn(own.map(([, text]) => text));
    const unused = en.map(([key]) => key.replace(/_(one|other)$/, '')).filter((key) => !named(key));
    expect(unused).toEqual([]);
  });
});
