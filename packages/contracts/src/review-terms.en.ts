/** English words of the weekly review, the same on the page and on the printed sheet. */
import type { ActionKind } from './actions.ts';
import type { Week } from './analyses.ts';
import type { Clock } from './complaint-parts.ts';
import type { EffectVerdict } from './effects.ts';
import type { Promised } from './review-content.ts';

type Labels<Word extends string> = Readonly<Record<Word, string>>;
export const reviewParts = [
  'promises',
  'signals',
  'figures',
  'causes',
  'costliest',
  'escapes',
  'gates',
  'prevention',
  'complaints',
  'actions',
  'effects',
  'gaps',
  'decisions',
] as const;
export type ReviewPart = (typeof reviewParts)[number];

export interface ReviewTerms {
  readonly title: string;
  readonly group: string;
  readonly part: Labels<ReviewPart>;
  /** What the part says and when not to trust it, in one sentence. */
  readonly about: Labels<ReviewPart>;
  /** Shown where a part has nothing to show. */
  readonly nothing: Labels<ReviewPart>;
  readonly promise: Labels<Promised['promise']>;
  readonly verdict: Labels<EffectVerdict>;
  readonly kind: Labels<ActionKind>;
  readonly reply: Labels<Clock['kind']>;
  readonly clock: Labels<Clock['state']>;
  readonly headline: Labels<Week['headlines'][number]['key']>;
  readonly waiting: Labels<Week['decisions'][number]['kind']>;
  readonly gap: Labels<Week['gaps'][number]['kind']>;
  readonly change: { readonly new: string; readonly noise: string; readonly up: string; readonly down: string };
  readonly column: Labels<
    | 'what'
    | 'owner'
    | 'due'
    | 'kept'
    | 'figure'
    | 'now'
    | 'interval'
    | 'change'
    | 'cause'
    | 'reports'
    | 'share'
    | 'booked'
    | 'estimated'
    | 'report'
    | 'way'
    | 'gatesPassed'
    | 'gate'
    | 'foundHere'
    | 'foundLater'
    | 'asReported'
    | 'withField'
    | 'option'
    | 'perYear'
    | 'payback'
    | 'pays'
    | 'complaint'
    | 'customer'
    | 'next'
    | 'overdue'
    | 'verdict'
    | 'since'
    | 'recurrences'
    | 'kind'
    | 'number'
  >;
  readonly said: {
    readonly noCause: string;
    readonly unknown: string;
    readonly to: (low: string, high: string) => string;
    readonly atLeast: (low: string) => string;
    readonly more: (count: string) => string;
    readonly silenced: (count: string) => string;
    readonly echoes: (count: string) => string;
    readonly back: string;
    readonly held: (rate: string, tested: string) => string;
    readonly passed: (gates: string) => string;
    readonly ofKnown: (known: string) => string;
    readonly next: (gate: string) => string;
    readonly between: (gates: string) => string;
    readonly notYet: string;
    readonly complaints: (open: string, overdue: string, short: string, paused: string) => string;
    readonly safetyUnseen: (count: string) => string;
    readonly safety: string;
    readonly actions: (open: string, overdue: string, reopened: string) => string;
    readonly effects: (held: string, notShown: string, notHeld: string) => string;
    readonly days: (days: string) => string;
    readonly years: (years: string) => string;
    readonly never: string;
    readonly changed: string;
    readonly of: (part: string, whole: string) => string;
    readonly waiting: string;
    readonly quiet: string;
  };
  readonly stamp: {
    readonly week: (week: string) => string;
    readonly figures: (at: string) => string;
    readonly lookedBack: (period: string) => string;
    readonly live: string;
    readonly open: string;
    readonly closed: (by: string, at: string) => string;
    readonly edition: (edition: string, reason: string) => string;
    readonly frozen: string;
    readonly data: (reports: string, terminals: string, change: string, version: string) => string;
    readonly noChange: string;
    readonly hash: (hash: string) => string;
    readonly estimates: string;
    readonly page: (page: string, pages: string) => string;
    readonly rates: (rates: string) => string;
    readonly withoutRate: (currencies: string) => string;
    readonly broken: string;
  };
  readonly mail: {
    readonly subject: (who: string, week: string) => string;
    readonly text: (who: string, period: string) => string;
    readonly file: (who: string, week: string) => string;
  };
}

export const reviewTerms: ReviewTerms = {
  title: 'Weekly review',
  group: 'Group',
  part: {
    promises: 'What was promised',
    signals: 'What fails more than it should',
    figures: 'The week in figures',
    causes: 'What went wrong',
    costliest: 'Costliest escapes',
    escapes: 'What slipped through',
    gates: 'Where the gates leak',
    prevention: 'What prevention would pay',
    complaints: 'Complaints and their clocks',
    actions: 'Actions overdue',
    effects: 'Did the fixes hold',
    gaps: 'What the data lacks',
    decisions: 'Decided today',
  },
  about: {
    promises:
      'Actions that earlier reviews decided: kept means carried out by the day promised, as far as their owners recorded it.',
    signals:
      'Combinations with more reports than their production or their equals explain, over thirteen weeks; some of them are chance, and what is not reported is not seen.',
    figures:
      'Each figure against the week before; coloured is only what moved more than chance explains. A late report changes it afterwards.',
    causes:
      'By reports of the week; the intervals of the shares hold together. A cause not yet sorted is none of them.',
    costliest:
      'Single reports by their cost where found, in the plant’s own currency; an estimate is only as good as its standard cost.',
    escapes:
      'Reports with a known origin that passed gates before they were found; faults that nobody has found yet are missing.',
    gates:
      'Found here ÷ (found here + found later), thirteen weeks; “with the field” adds field faults still to come, as far as the delay of earlier ones tells.',
    prevention: 'From saved what-if scenarios, as they were computed; the ranges of effect were entered by engineers.',
    complaints: 'Open complaints, the clock that runs out first on top; clocks run in the plant’s working time.',
    actions: 'Not carried out and past their day.',
    effects:
      'Judged from what was built since the clean point, allowing for repeated looks; “not shown yet” is no verdict against the fix.',
    gaps: 'Where these are many, the figures above are less sure than their intervals say.',
    decisions: 'Each is an action with an owner and a day; the next review asks for it.',
  },
  nothing: {
    promises: 'No promise of an earlier review is due or was kept this week.',
    signals: 'Nothing fails more than it should, as far as these reports can tell.',
    figures: 'Nothing was reported.',
    causes: 'Nothing was reported this week.',
    costliest: 'No escape with a cost in this week.',
    escapes: 'No report of the week has a known origin.',
    gates: 'Too little is known of origins to judge the gates.',
    prevention: 'No what-if scenario is saved.',
    complaints: 'No complaint is open.',
    actions: 'No action is overdue.',
    effects: 'No fix is being judged.',
    gaps: 'Nothing is missing.',
    decisions: 'Nothing was decided.',
  },
  promise: { kept: 'kept', kept_late: 'kept late', broken: 'broken', given_up: 'given up', not_due: 'not due yet' },
  verdict: { held: 'held', not_shown_yet: 'not shown yet', did_not_hold: 'did not hold' },
  kind: { containment: 'Containment', corrective: 'Corrective', preventive: 'Preventive', read_across: 'Read-across' },
  reply: {
    first_reply: 'first reply',
    containment: 'containment',
    cause: 'cause',
    corrective_action: 'corrective action',
  },
  clock: {
    overdue: 'overdue',
    short: 'running short',
    running: 'running',
    paused: 'paused',
    answered_late: 'answered late',
    answered_in_time: 'answered in time',
  },
  headline: {
    reports: 'Reports',
    terminals: 'Failed terminals',
    dpmo: 'Failed per million inserted',
    booked: 'Booked cost',
    estimate: 'Estimated cost',
    escaped: 'Passed two or more gates',
    outside: 'Found at a customer or in the field',
  },
  waiting: {
    safety_unsorted: 'safety-relevant without a cause',
    outside_unsorted: 'from customers or the field without a cause',
    costly_unsorted: 'costly without a cause',
    disposition_pending: 'parts wait for a disposition',
    tool_service_due: 'tools due for service',
  },
  gap: {
    no_cause: 'reports without a cause',
    no_origin: 'reports without a stage of origin',
    no_evidence: 'reports without a photo or written proof',
    no_cost: 'reports without any cost',
    no_production: 'plant days without production, so without a rate',
  },
  change: { new: 'new', noise: 'within noise', up: 'more', down: 'fewer' },
  column: {
    what: 'What',
    owner: 'Owner',
    due: 'Due',
    kept: 'Kept?',
    figure: 'Figure',
    now: 'This week',
    interval: 'Interval',
    change: 'Change',
    cause: 'Cause',
    reports: 'Reports',
    share: 'Share',
    booked: 'Booked',
    estimated: 'Estimated',
    report: 'Report',
    way: 'Made → found',
    gatesPassed: 'Gates',
    gate: 'Gate',
    foundHere: 'Here',
    foundLater: 'Later',
    asReported: 'Found, as reported',
    withField: 'With the field',
    option: 'Scenario',
    perYear: 'Net a year',
    payback: 'Pays back in',
    pays: 'Pays',
    complaint: 'Complaint',
    customer: 'Customer',
    next: 'Next reply',
    overdue: 'Overdue',
    verdict: 'Verdict',
    since: 'Clean point',
    recurrences: 'Again',
    kind: 'Kind',
    number: 'Number',
  },
  said: {
    noCause: 'no cause yet',
    unknown: 'not known',
    to: (low, high) => `${low} to ${high}`,
    atLeast: (low) => `${low} or more`,
    more: (count) => `and ${count} more`,
    silenced: (count) => `called “not news”: ${count}`,
    echoes: (count) => `explains ${count} more`,
    back: 'was called “not news” and has grown since',
    held: (rate, tested) => `${tested} combinations looked at; on average at most ${rate} of those listed are chance.`,
    passed: (gates) => `passed ${gates} or more`,
    ofKnown: (known) => `of ${known} reports with a known origin`,
    next: (gate) => `The next money does most good at: ${gate}.`,
    between: (gates) => `The data do not yet separate: ${gates}.`,
    notYet: 'Where the next money does most good cannot be said yet.',
    complaints: (open, overdue, short, paused) =>
      `Open: ${open} · with a clock overdue: ${overdue} · running short: ${short} · paused: ${paused}`,
    safetyUnseen: (count) => `Safety-relevant and not yet seen by the person responsible for product safety: ${count}`,
    safety: 'safety',
    actions: (open, overdue, reopened) => `Open: ${open} · overdue: ${overdue} · opened again: ${reopened}`,
    effects: (held, notShown, notHeld) => `Held: ${held} · not shown yet: ${notShown} · did not hold: ${notHeld}`,
    days: (days) => `${days} d`,
    years: (years) => `${years} years`,
    never: 'perhaps never',
    changed: 'new this week',
    of: (part, whole) => `${part} of ${whole}`,
    waiting: 'Waiting for a decision',
    quiet: 'A week without a report. See at the end whether the data is complete.',
  },
  stamp: {
    week: (week) => `Week ${week}`,
    figures: (at) => `Figures of ${at}`,
    lookedBack: (period) => `Signals and gates: ${period}`,
    live: 'Not kept',
    open: 'Open: decisions are being taken',
    closed: (by, at) => `Closed by ${by} on ${at}`,
    edition: (edition, reason) => `Edition ${edition}, corrected: ${reason}`,
    frozen: 'Figures as they were then; links open the reports as they are now.',
    data: (reports, terminals, change, version) =>
      `Counted from ${reports} reports and ${terminals} terminals inserted on record; newest change ${change}; Escape Ledger ${version}.`,
    noChange: 'none',
    hash: (hash) => `SHA-256 ${hash}`,
    estimates: '~ and italics: an estimate, never added to what is booked.',
    page: (page, pages) => `${page} of ${pages}`,
    rates: (rates) => `Converted at ${rates}.`,
    withoutRate: (currencies) => `Without an exchange rate, and so left out: ${currencies}.`,
    broken: 'What is kept is not what was closed: its checksum does not fit. Ask whoever looks after the database.',
  },
  mail: {
    subject: (who, week) => `Weekly review ${who}, ${week}`,
    text: (who, period) =>
      `The review of ${who} for ${period} is ready; it comes with this mail as a PDF of two pages.`,
    file: (who, week) => `review-${who}-${week}.pdf`,
  },
};
