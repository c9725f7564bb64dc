/** Reviews for tests of the printed sheet and the page: the fullest week that the program lists, and one without anything. */
import type { Review } from '#contracts/review.ts';
import type { ReviewContent } from '#contracts/review-content.ts';
import type { Change } from '#contracts/shared/change.ts';
import type { Estimate } from '#contracts/shared/estimate.ts';
import { causes, stages } from '#contracts/taxonomy.ts';

const id = (place: number) => `01890000-0000-7000-8000-${String(place).padStart(12, '0')}`;
const times = <Item>(count: number, make: (place: number) => Item): Item[] =>
  Array.from({ length: count }, (_, place) => make(place));
const long =
  'Push-click-pull check at every insertion station of lines one to four, with a signed record per shift and a spare';
const estimate = (value: number, low: number, high: number | null): Estimate => ({
  value,
  interval: { low, high, confidence: 0.95 },
  reason: null,
});
const none = { value: null, interval: null, reason: 'no_production' } as const satisfies Estimate;
const moved: Change = {
  ratio: 1.83,
  interval: { low: 1.21, high: 2.77, confidence: 0.95 },
  verdict: 'up',
  basis: 'rate',
  reason: null,
};
const unmoved: Change = { ratio: null, interval: null, verdict: null, basis: null, reason: 'no_reports' };
const headlineKeys = ['reports', 'terminals', 'dpmo', 'booked', 'estimate', 'escaped', 'outside'] as const;
const waitingKinds = [
  'safety_unsorted',
  'outside_unsorted',
  'costly_unsorted',
  'disposition_pending',
  'tool_service_due',
] as const;
const gapKinds = ['no_cause', 'no_origin', 'no_evidence', 'no_cost', 'no_production'] as const;

const head = {
  schema: 1 as const,
  period: { from: '2026-06-08', to: '2026-06-15' },
  compared: { from: '2026-06-01', to: '2026-06-08' },
  lookedBack: { from: '2026-03-16', to: '2026-06-15' },
  data: {
    figuresAt: '2026-06-15T06:00:00.000Z',
    lastChange: { id: id(1), at: '2026-06-15T05:12:00.000Z' },
    reports: 1_234_567,
    terminalsInserted: 987_654_321,
    application: '0.1.0',
    migration: '20261125700000_reviews',
  },
};

export const emptyContent = (): ReviewContent => ({
  ...head,
  group: false,
  plants: [{ id: id(10), code: 'LIS' }],
  places: [{ id: id(10), code: 'LIS', name: 'Lisbon works', zone: 'Europe/Lisbon' }],
  currency: 'EUR',
  rates: [],
  withoutRate: [],
  data: { ...head.data, lastChange: null, reports: 0, terminalsInserted: 0 },
  promises: [],
  signals: { falseDiscoveryRate: 0.1, tested: 0, list: [], more: 0, silenced: 0 },
  headlines: headlineKeys.map((key) => ({
    key,
    figure: key === 'dpmo' ? none : estimate(0, 0, 3.7),
    previous: key === 'dpmo' ? none : estimate(0, 0, 3.7),
    change: unmoved,
    filter: '',
  })),
  causes: [],
  costliest: [],
  waiting: waitingKinds.map((kind) => ({ kind, count: 0, link: '/failures' })),
  escapes: { known: 0, passed: [], routes: [], gates: [], next: { stage: null, candidates: [], perMoney: false } },
  prevention: [],
  complaints: { open: 0, overdue: 0, short: 0, paused: 0, safetyUnseen: 0, list: [] },
  actions: { open: 0, overdue: 0, reopened: 0, list: [] },
  effects: { held: 0, notShownYet: 0, didNotHold: 0, list: [] },
  gaps: gapKinds.map((kind) => ({ kind, count: 0, of: 0, link: '/failures' })),
  decisions: [],
});

const action = (place: number) => ({
  id: id(100 + place),
  number: `LIS-A-26-${1000 + place}`,
  plantId: id(10),
  plantCode: 'LIS',
  title: `${long} ${place}`,
  owner: 'Wilhelmina Featherstonehaugh-Oberlander',
  dueOn: '2026-06-12',
});

export const fullContent = (): ReviewContent => ({
  ...emptyContent(),
  ...head,
  group: true,
  plants: times(12, (place) => ({ id: id(10 + place), code: `PL${place}` })),
  places: times(12, (place) => ({
    id: id(10 + place),
    code: `PL${place}`,
    name: `Works ${place}`,
    zone: 'Europe/Lisbon',
  })),
  rates: times(6, (place) => ({
    base: ['USD', 'MXN', 'CNY', 'PLN', 'GBP', 'JPY'][place]!,
    quote: 'EUR',
    rate: '0.923456',
    rateOn: '2026-06-01',
  })),
  withoutRate: ['THB', 'VND'],
  promises: times(40, (place) => ({
    ...action(place),
    kind: 'corrective',
    state: 'under_way',
    week: '2026-06-01',
    doneOn: null,
    promise: (['broken', 'kept', 'kept_late', 'given_up', 'not_due'] as const)[place % 5]!,
  })),
  signals: {
    falseDiscoveryRate: 0.1,
    tested: 123_456,
    more: 321,
    silenced: 17,
    list: times(6, (place) => ({
      key: `tool:${place}`,
      kind: 'fixturePosition',
      names: {
        plant: 'PL1',
        housing: null,
        terminal: null,
        tool: `TEST-FIXTURE-WITH-A-LONG-CODE-${place}`,
        lot: null,
        housingLot: null,
        fixturePosition: 'P12',
        cavity: null,
      },
      plantId: id(10),
      opens: {},
      observed: 1234,
      expected: 345.6,
      basis: 'exposure',
      peers: null,
      ratio: 3.57,
      interval: { low: 2.9, high: 4.4, confidence: 0.95 },
      adjustedP: 0.0001,
      excessAtLeast: 600,
      since: { day: '2026-04-06', low: '2026-03-30', high: '2026-04-20', confidence: 0.95, ratio: 3.1, reason: null },
      echoes: 12,
      back: true,
      filter: 'from=2026-03-16&to=2026-06-15',
    })),
  },
  headlines: headlineKeys.map((key) => ({
    key,
    figure: estimate(123_456_789, 120_000_000, 127_000_000),
    previous: estimate(98_765_432, 90_000_000, 99_000_000),
    change: moved,
    filter: 'from=2026-06-08&to=2026-06-15',
  })),
  causes: causes.slice(0, 5).map((cause) => ({
    cause,
    reports: 12_345,
    terminals: 23_456,
    bookedMinor: 123_456_789,
    estimateMinor: 98_765_432,
    share: 0.23,
    shareInterval: { low: 0.21, high: 0.25, confidence: 0.95 },
    topProbability: 0.97,
    change: moved,
    filter: `cause=${cause}`,
  })),
  costliest: times(8, (place) => ({
    id: id(200 + place),
    number: `PL1-26-${123_456 + place}`,
    plantCode: 'PL1',
    cause: 'application_limit',
    origin: 'termination',
    found: 'field',
    gatesPassed: 7,
    terminals: 12,
    bookedMinor: 12_345_678,
    estimateMinor: 9_876_543,
    currency: 'EUR',
  })),
  waiting: waitingKinds.map((kind) => ({ kind, count: 12_345, link: '/failures?cause=none' })),
  escapes: {
    known: 54_321,
    passed: [1, 2, 3].map((gates) => ({
      gates,
      reports: 12_345,
      share: estimate(0.23, 0.21, 0.25),
      filter: `gates=${gates}`,
    })),
    routes: times(4, () => ({
      origin: 'termination',
      found: 'electrical_test',
      reports: 4321,
      share: estimate(0.08, 0.07, 0.09),
      filter: 'origin=termination',
    })),
    gates: stages.slice(0, 9).map((stage) => ({
      stage,
      foundHere: 12_345,
      foundLater: 6789,
      effectiveness: estimate(0.64, 0.62, 0.66),
      matured: estimate(0.61, 0.55, 0.65),
    })),
    next: { stage: null, candidates: ['insertion', 'electrical_test', 'product_test'], perMoney: false },
  },
  prevention: times(12, (place) => ({
    id: id(300 + place),
    name: long,
    plantCode: `PL${place}`,
    currency: 'EUR',
    computedAt: '2026-06-10T10:00:00.000Z',
    horizonYears: 3,
    netPerYear: estimate(12_345_600, 4_000_000, 20_000_000),
    paybackYears: estimate(1.2, 0.6, null),
    probabilityPays: 0.93,
  })),
  complaints: {
    open: 123,
    overdue: 12,
    short: 23,
    paused: 4,
    safetyUnseen: 3,
    list: times(6, (place) => ({
      id: id(400 + place),
      number: `PL1-C-26-${1000 + place}`,
      plantCode: 'PL1',
      customerCode: 'LONGCUSTOMER',
      title: long,
      receivedAt: '2026-06-10T10:00:00.000Z',
      safety: true,
      safetySeen: false,
      next: {
        kind: 'corrective_action',
        state: 'overdue',
        dueAt: '2026-06-12T15:00:00.000Z',
        ownerName: 'Wilhelmina Featherstonehaugh',
        minutesLeft: -600,
      },
    })),
  },
  actions: { open: 432, overdue: 98, reopened: 7, list: times(8, (place) => ({ ...action(place), daysOverdue: 45 })) },
  effects: {
    held: 34,
    notShownYet: 56,
    didNotHold: 7,
    list: times(6, (place) => ({
      ...action(place),
      verdict: 'did_not_hold',
      cleanPoint: '2026-03-02',
      recurrences: 5,
      changed: true,
    })),
  },
  gaps: gapKinds.map((kind) => ({ kind, count: 12_345, of: 54_321, link: '/failures?cause=none' })),
  decisions: times(40, (place) => ({
    ...action(place),
    kind: 'preventive',
    description: long,
    state: 'agreed',
    decidedAt: '2026-06-15T08:00:00.000Z',
    decidedBy: 'Test manager',
  })),
});

export const reviewWith = (content: ReviewContent, more: Partial<Review> = {}): Review => ({
  id: id(2),
  state: 'closed',
  edition: 2,
  reason: 'Three reports of Friday came late.',
  openedAt: '2026-06-15T07:00:00.000Z',
  openedBy: null,
  closedAt: '2026-06-15T08:30:00.000Z',
  closedBy: 'Test manager',
  hash: 'f'.repeat(64),
  intact: true,
  editions: [],
  mayWrite: true,
  isOver: true,
  content,
  version: 3,
  ...more,
});
