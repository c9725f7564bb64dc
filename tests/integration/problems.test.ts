import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { Problem } from '#contracts/shared/problem.ts';
import { createTestApp } from '#tests/support/app.ts';
import { fingerprinter } from '#tests/support/fingerprint.ts';
import { hostileBodies, hostileParams, hostileQueries, rawRequests } from '#tests/support/hostile.ts';
import { makePlant } from '#tests/support/master-data.ts';
import type { Ground, Request } from '#tests/support/requests/example.ts';
import { asHeaders, createGround, nameOf, requests, send, servedBy } from '#tests/support/requests.ts';

const endpoints = await (async () => {
  const app = await createTestApp();
  const served = servedBy(app);
  await app.close();
  return served.filter((endpoint) => requests[nameOf(endpoint)]);
})();

let ground: Ground;
let fingerprint: () => Promise<string>;
beforeAll(async () => {
  ground = await createGround();
  fingerprint = await fingerprinter(ground.db);
});
afterAll(() => ground.close());

type Endpoint = (typeof endpoints)[number];
type Trial = [what: string, request: Request];

/** What is wrong with an answer to a request that may or may not be acceptable. */
function faultOf({ status, body, headers }: Awaited<ReturnType<typeof send>>): string | null {
  if (status < 400) return null;
  if (status >= 500) return `${status} ${JSON.stringify(body)}`;
  if (!String(headers['content-type']).startsWith('application/problem+json'))
    return `${status} is no problem document`;
  const problem = Problem.safeParse(body);
  if (!problem.success || problem.data.detail.length < 10) return `${status} says nothing: ${JSON.stringify(body)}`;
  return /\b(prisma|postgres|syntax error|stack|at \/|undefined)\b/i.test(problem.data.detail)
    ? `${status} tells of our insides: ${problem.data.detail}`
    : null;
}

/** Sends every trial as the administrator; each refusal must be a problem document and leave no trace. */
async function trialsOf(endpoint: Endpoint, trials: (valid: Request) => Iterable<Trial>): Promise<string[]> {
  const { make } = requests[nameOf(endpoint)]!;
  const faults: string[] = [];
  let before = '';
  const fresh = async () => {
    const own = (await makePlant(ground.db)).id;
    const valid = await make({ ...ground, own }, own, ground.admin);
    before = await fingerprint();
    return valid;
  };
  let valid = await fresh();
  for (const [what, request] of trials(valid)) {
    const aimed = { ...request, params: { ...valid.params, ...(request.params ?? {}) } };
    const answer = await send(ground, endpoint, { ...aimed, version: valid.version }, asHeaders(ground.admin));
    const fault = faultOf(answer);
    if (fault) faults.push(`${what}: ${fault}`);
    if (answer.status < 400) valid = await fresh();
    else if ((await fingerprint()) !== before) {
      faults.push(`${what}: ${answer.status}, yet something was changed`);
      valid = await fresh();
    }
  }
  return faults;
}

const paramsOf = ({ path }: Endpoint) => [...path.matchAll(/:(\w+)/g)].map(([, name]) => name as string);
const named = (list: Endpoint[]) => list.map((endpoint) => [nameOf(endpoint), endpoint] as const);

describe.each(named(endpoints.filter(({ body }) => body)))('the body of %s', (name, endpoint) => {
  it('may hold anything anywhere', async () => {
    expect(await trialsOf(endpoint, (valid) => hostileBodies(withoutParams(valid)))).toEqual([]);
  });
  it('may be anything at all', async () => {
    const anything = fc.sample(fc.json({ maxDepth: 3 }), { numRuns: 15, seed: 20260601 });
    const trials = anything.map((text): Trial => [text, { body: JSON.parse(text) }]);
    expect(await trialsOf(endpoint, (valid) => [...trials, ...rawRequests(withoutParams(valid))])).toEqual([]);
  });
  it('is refused when it has nothing to do with the endpoint', async () => {
    const valid = await requests[name]!.make(ground, ground.own, ground.admin);
    for (const body of [null, 'text', 7, [1, 2]]) {
      const answer = await send(ground, endpoint, { ...valid, body }, asHeaders(ground.admin));
      expect(answer.status, JSON.stringify(body)).toBe(400);
    }
  });
});

const withoutParams = ({ params: _, ...request }: Request): Request => request;

describe.each(named(endpoints.filter((endpoint) => paramsOf(endpoint).length > 0)))(
  'the address of %s',
  (name, endpoint) => {
    it.each(paramsOf(endpoint))('may hold anything as :%s', async (param) => {
      const trials = hostileParams(param).map(([what, params]): Trial => [what, { params }]);
      const { body, payload, contentType } = await requests[name]!.make(ground, ground.own, ground.admin);
      const carried = { body, payload, contentType };
      expect(await trialsOf(endpoint, () => trials.map(([what, it]) => [what, { ...carried, ...it }]))).toEqual([]);
    });
  },
);

describe.each(named(endpoints.filter(({ method }) => method === 'GET')))('the query of %s', (_, endpoint) => {
  it('may hold anything', async () => {
    expect(await trialsOf(endpoint, () => hostileQueries.map((query): Trial => [query, { query }]))).toEqual([]);
  });
});

describe.each(named(endpoints.filter(({ write }) => write)))('the headers of %s', (name, endpoint) => {
  it('may hold anything', async () => {
    const valid = await requests[name]!.make(ground, ground.own, ground.admin);
    const before = await fingerprint();
    const [header, values] =
      endpoint.write === 'update'
        ? ['if-match', ['', 'x', '*', '"-1"', '"1e3"', '"99999999999"', 'W/"1"', '"0"']]
        : ['idempotency-key', ['', 'short', 'é'.repeat(9), 'two words here', 'k'.repeat(5000)]];
    // What is not written yet has version 0.
    for (const value of values.filter((it) => it !== `"${valid.version}"`)) {
      const sent = { ...valid, version: undefined };
      const answer = await send(ground, endpoint, sent, { ...asHeaders(ground.admin), [header]: value });
      expect(faultOf(answer), value.slice(0, 20)).toBeNull();
      expect(answer.status, value.slice(0, 20)).toBeGreaterThanOrEqual(400);
    }
    expect(await fingerprint()).toBe(before);
  });
});

describe('an address that does not exist', () => {
  it.each(['/api/v1/nothing', '/api/v1/plants/%', '/api/v1/plants/x/y/z', '/api/v2/plants'])(
    '%s is a problem document',
    async (url) => {
      const { status, body } = await ground.admin.get(url);
      expect([400, 404]).toContain(status);
      expect(Problem.parse(body).detail.length).toBeGreaterThan(10);
    },
  );
});
