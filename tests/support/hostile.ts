/** Values and requests that no client should send: what they do to a valid request, one place at a time. */
import type { Request } from './requests/example.ts';

export const hostileValues: readonly unknown[] = [
  null,
  -1,
  0.5,
  1e308,
  2 ** 53,
  true,
  '',
  '\u0000',
  'broken \ud800 half',
  'x'.repeat(20_001),
  '20260-01-01',
  '2026-02-30',
  '2026-02-01T25:61:00Z',
  "'; drop table plant; --",
  '=1+1',
  'ffffffff-ffff-4fff-bfff-ffffffffffff',
  {},
  [],
  [[[[[]]]]],
  { constructor: { prototype: {} } },
];

type Path = readonly (string | number)[];

export function pathsOf(value: unknown, path: Path = []): Path[] {
  if (typeof value !== 'object' || value === null) return [path];
  return [path, ...Object.entries(value).flatMap(([key, item]) => pathsOf(item, [...path, key]))];
}

export function withValueAt(value: unknown, [key, ...rest]: Path, put: unknown): unknown {
  if (key === undefined) return put;
  const copy = structuredClone(value) as Record<string | number, unknown>;
  copy[key] = withValueAt(copy[key], rest, put);
  return copy;
}

/** The same request with one value of its body replaced, for every value of the body and every hostile value. */
export function* hostileBodies(request: Request): Generator<[what: string, request: Request]> {
  for (const path of pathsOf(request.body))
    for (const value of hostileValues)
      yield [
        `body/${path.join('/')} = ${JSON.stringify(value)?.slice(0, 60)}`,
        { ...request, body: withValueAt(request.body, path, value) },
      ];
}

const rawBodies = ['', '{', 'nonsense', '{"a":1}}', '[', '"\\u0000"', '1e999', `{"a":"${'x'.repeat(3_000_000)}"}`];

/** Bodies that are not what they say they are. */
export function* rawRequests(request: Request): Generator<[what: string, request: Request]> {
  const { body: _, payload: __, contentType: ___, ...rest } = request;
  for (const text of rawBodies)
    for (const contentType of ['application/json', 'text/plain', 'application/xml', 'multipart/form-data; boundary=x'])
      yield [`${contentType} ${text.slice(0, 20)}`, { ...rest, payload: Buffer.from(text), contentType }];
}

const hostileTexts = ['', 'x', '%00', '%ff', '..%2f..', '0', 'x'.repeat(300), 'ffffffff-ffff-4fff-bfff-ffffffffffff'];
export const hostileParams = (name: string): [string, Record<string, string>][] =>
  hostileTexts.slice(1).map((text) => [text, { [name]: decodedOr(text) }]);
const decodedOr = (text: string): string => {
  try {
    return decodeURIComponent(text);
  } catch {
    return text;
  }
};

/** Query strings against every key that lists and analyses know, and some that nobody knows. */
export const hostileQueries: readonly string[] = [
  'limit=0',
  'limit=1e9',
  'limit=abc',
  'limit=-1',
  'cursor=%00',
  'cursor=bm9uc2Vuc2U',
  `cursor=${Buffer.from('[[],{}]').toString('base64url')}`,
  `cursor=${Buffer.from('["2026-01-01","\\u0000"]').toString('base64url')}`,
  `cursor=${'x'.repeat(500)}`,
  'from=20260-01-01',
  'from=2026-02-30&to=2026-01-01',
  'from=2099-12-31&to=2000-01-01',
  'plant=nonsense',
  'plant=ffffffff-ffff-4fff-bfff-ffffffffffff',
  'plant=a&plant=b',
  'q=%00',
  'q=%25_%5C%27%22',
  'q=a&q=b',
  'cause=nonsense',
  'gates=1e99',
  'currency=XXX',
  'format=exe',
  'dimension=nonsense',
  '__proto__=1',
  'constructor[prototype]=1',
  '%',
];
