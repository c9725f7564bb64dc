/** The parts of the printed review, in the order in which a manager goes through them. */
import type { Content } from 'pdfmake/interfaces.js';
import type { ReviewContent } from '#contracts/review-content.ts';
import type { ReviewPart } from '#contracts/review-terms.en.ts';
import { signalSentence } from '#contracts/signal-words.ts';
import type { Language } from './language.ts';
import { type Cell, type Column, line, part, quiet, table } from './layout.ts';

/** How many rows each part may have before it says how many more there are. */
export type Room = Readonly<Record<'promises' | 'signals' | 'rows' | 'decisions', number>>;

interface Sheet {
  content: ReviewContent;
  language: Language;
  room: Room;
}

const kept = <Row>(rows: readonly Row[], room: number) => rows.slice(0, room);
const rest = ({ words, format }: Language, all: number, room: number): Content[] =>
  all > room ? [quiet(words.said.more(format.count(all - room)))] : [];

const section = ({ words }: Language, name: ReviewPart, body: readonly Content[]): Content =>
  part(words.part[name], words.about[name], body.length > 0 ? body : [line(words.nothing[name])]);

const whole: readonly string[] = ['number', 'due', 'complaint', 'report'];
const cols = (
  { words: { column } }: Language,
  ...columns: [keyof typeof column, Column['width'], boolean?][]
): Column[] =>
  columns.map(([name, width, end]) => ({
    title: column[name],
    width,
    ...(end && { end }),
    ...(whole.includes(name) && { whole: true }),
  }));

const money =
  ({ format }: Language, currency: string, estimated: boolean) =>
  (amountMinor: number): Cell =>
    amountMinor === 0
      ? '–'
      : { text: format.moneyShort({ amountMinor: Math.round(amountMinor), currency }), estimated };

function promises({ content, language, room }: Sheet): Content {
  const { words, format } = language;
  const rows = kept(content.promises, room.promises).map((it): Cell[] => [
    it.number,
    it.title,
    it.owner,
    format.day(it.dueOn),
    { text: words.promise[it.promise], caution: it.promise === 'broken', strong: it.promise !== 'not_due' },
  ]);
  const columns = cols(
    language,
    ['number', 'auto'],
    ['what', '*'],
    ['owner', 'auto'],
    ['due', 'auto'],
    ['kept', 'auto'],
  );
  return section(language, 'promises', [
    ...(rows.length > 0 ? [table(columns, rows)] : []),
    ...rest(language, content.promises.length, room.promises),
  ]);
}

function signals({ content, language, room }: Sheet): Content {
  const { words, format, locale } = language;
  const { list, more, silenced, tested, falseDiscoveryRate } = content.signals;
  const sentences = kept(list, room.signals).map((it, place) => {
    const notes = [
      ...(it.echoes > 0 ? [words.said.echoes(format.count(it.echoes))] : []),
      ...(it.back ? [words.said.back] : []),
    ];
    return line(`${place + 1}. ${signalSentence(it, locale)}${notes.length > 0 ? ` (${notes.join('; ')})` : ''}`);
  });
  const beyond = more + Math.max(0, list.length - room.signals);
  const tail = [
    ...(beyond > 0 ? [words.said.more(format.count(beyond))] : []),
    ...(silenced > 0 ? [words.said.silenced(format.count(silenced))] : []),
    words.said.held(format.percent(falseDiscoveryRate, 0), format.count(tested)),
  ];
  return section(language, 'signals', [
    ...(sentences.length > 0 ? sentences : [line(words.nothing.signals)]),
    quiet(tail.join(' · ')),
  ]);
}

function figures({ content, language }: Sheet): Content {
  const { words, format } = language;
  const rows = content.headlines.map(({ key, figure, previous, change }): Cell[] => {
    const isMoney = key === 'booked' || key === 'estimate';
    const write = (value: number) => {
      if (isMoney) return format.moneyShort({ amountMinor: Math.round(value), currency: content.currency });
      return key === 'dpmo' ? format.significant(value) : format.count(value);
    };
    const estimated = key === 'estimate';
    const moved = change.verdict === 'up' || change.verdict === 'down';
    return [
      words.headline[key],
      { text: language.figure(figure, write), estimated: estimated && figure.value !== null, strong: true },
      language.interval(figure.interval, write),
      { text: language.figure(previous, write), estimated: estimated && previous.value !== null },
      { text: language.change(change), strong: moved, caution: change.verdict === 'up' },
    ];
  });
  const [what, now, interval, before, change] = cols(
    language,
    ['figure', '*'],
    ['now', 'auto', true],
    ['interval', 'auto'],
    ['now', 'auto', true],
    ['change', 'auto'],
  );
  const named = { ...before!, title: format.period(content.compared.from, content.compared.to) };
  return section(language, 'figures', [table([what!, now!, interval!, named, change!], rows)]);
}

function causes({ content, language, room }: Sheet): Content {
  const { words, terms, format } = language;
  const { currency } = content;
  const rows = kept(content.causes, room.rows).map((it): Cell[] => [
    it.cause ? terms.cause[it.cause] : words.said.noCause,
    format.count(it.reports),
    `${format.percent(it.share, 0)} (${language.interval(it.shareInterval, (share) => format.percent(share, 0))})`,
    money(language, currency, false)(it.bookedMinor),
    money(language, currency, true)(it.estimateMinor),
    { text: language.change(it.change), caution: it.change.verdict === 'up' },
  ]);
  const columns = cols(
    language,
    ['cause', '*'],
    ['reports', 'auto', true],
    ['share', 'auto'],
    ['booked', 'auto', true],
    ['estimated', 'auto', true],
    ['change', 'auto'],
  );
  return section(language, 'causes', rows.length > 0 ? [table(columns, rows)] : []);
}

function costliest({ content, language, room }: Sheet): Content {
  const { words, terms, format } = language;
  const rows = kept(content.costliest, Math.min(4, room.rows)).map((it): Cell[] => [
    it.number,
    `${it.origin ? terms.stageShort[it.origin] : words.said.unknown} → ${terms.stageShort[it.found]}`,
    it.gatesPassed === null ? words.said.unknown : format.count(it.gatesPassed),
    it.cause ? terms.cause[it.cause] : words.said.noCause,
    money(language, it.currency, false)(it.bookedMinor),
    money(language, it.currency, true)(it.estimateMinor),
  ]);
  const columns = cols(
    language,
    ['report', 'auto'],
    ['way', '*'],
    ['gatesPassed', 'auto', true],
    ['cause', 'auto'],
    ['booked', 'auto', true],
    ['estimated', 'auto', true],
  );
  return section(language, 'costliest', rows.length > 0 ? [table(columns, rows)] : []);
}

function escapes({ content, language }: Sheet): Content {
  const { words, terms, format } = language;
  const { known, passed, routes } = content.escapes;
  if (known === 0) return section(language, 'escapes', []);
  const share = (value: number) => format.percent(value, 0);
  const depths = passed.map(
    (it) => `${words.said.passed(String(it.gates))}: ${format.count(it.reports)}, ${language.sure(it.share, share)}`,
  );
  const ways = routes.map(
    (it) =>
      `${terms.stageShort[it.origin]} → ${terms.stageShort[it.found]}: ${format.count(it.reports)}, ${language.sure(it.share, share)}`,
  );
  return section(language, 'escapes', [
    line(`${depths.join(' · ')} ${words.said.ofKnown(format.count(known))}`),
    ...(ways.length > 0 ? [line(`${words.column.way}: ${ways.join(' · ')}`)] : []),
  ]);
}

function gates({ content, language }: Sheet): Content {
  const { words, terms, format } = language;
  const { gates: all, next } = content.escapes;
  const share = (value: number) => format.percent(value, 0);
  const rows = all
    .filter(({ foundHere, foundLater }) => foundHere + foundLater > 0)
    .map((it): Cell[] => [
      terms.stage[it.stage],
      format.count(it.foundHere),
      format.count(it.foundLater),
      language.sure(it.effectiveness, share),
      { text: language.sure(it.matured, share), estimated: it.matured.value !== null },
    ]);
  const columns = cols(
    language,
    ['gate', '*'],
    ['foundHere', 'auto', true],
    ['foundLater', 'auto', true],
    ['asReported', 'auto'],
    ['withField', 'auto'],
  );
  if (rows.length === 0) return section(language, 'gates', []);
  const where = next.stage
    ? words.said.next(terms.stage[next.stage])
    : next.candidates.length > 0
      ? words.said.between(next.candidates.map((stage) => terms.stageShort[stage]).join(', '))
      : words.said.notYet;
  return section(language, 'gates', [table(columns, rows), line({ text: where, strong: true })]);
}

function prevention({ content, language }: Sheet): Content {
  const { words, format } = language;
  const rows = kept(content.prevention, 5).map((it): Cell[] => {
    const write = (value: number) => format.moneyShort({ amountMinor: Math.round(value), currency: it.currency });
    return [
      `${it.plantCode}: ${it.name}`,
      { text: language.sure(it.netPerYear, write), estimated: it.netPerYear.value !== null },
      it.paybackYears.value === null
        ? language.figure(it.paybackYears, format.significant)
        : {
            text: `${words.said.years(format.significant(it.paybackYears.value, 2))} (${language.interval(it.paybackYears.interval, (years) => format.significant(years, 2))})`,
            estimated: true,
          },
      it.probabilityPays === null ? '–' : format.chance(it.probabilityPays),
    ];
  });
  const columns = cols(language, ['option', '*'], ['perYear', 'auto'], ['payback', 'auto'], ['pays', 'auto', true]);
  return section(language, 'prevention', rows.length > 0 ? [table(columns, rows)] : []);
}

function complaints({ content, language, room }: Sheet): Content {
  const { words, format } = language;
  const { open, overdue, short, paused, safetyUnseen, list } = content.complaints;
  if (open === 0) return section(language, 'complaints', []);
  const zoneOf = (code: string) => content.places.find((place) => place.code === code)?.zone;
  const rows = kept(list, room.rows).map((it): Cell[] => [
    it.number,
    it.customerCode,
    it.safety ? `${it.title} (${words.said.safety})` : it.title,
    it.next
      ? `${words.reply[it.next.kind]}, ${format.instant(it.next.dueAt, zoneOf(it.plantCode))}, ${it.next.ownerName}`
      : '–',
    {
      text: it.next ? words.clock[it.next.state] : '–',
      caution: it.next?.state === 'overdue',
      strong: it.next?.state === 'short',
    },
  ]);
  const columns = cols(
    language,
    ['complaint', 'auto'],
    ['customer', 'auto'],
    ['what', '*'],
    ['next', 'auto'],
    ['due', 'auto'],
  );
  return section(language, 'complaints', [
    line(
      words.said.complaints(...([open, overdue, short, paused].map(format.count) as [string, string, string, string])),
    ),
    ...(safetyUnseen > 0 ? [line({ text: words.said.safetyUnseen(format.count(safetyUnseen)), caution: true })] : []),
    table(columns, rows),
    ...rest(language, open, room.rows),
  ]);
}

function actions({ content, language, room }: Sheet): Content {
  const { words, format } = language;
  const { open, overdue, reopened, list } = content.actions;
  const rows = kept(list, room.rows).map((it): Cell[] => [
    it.number,
    it.title,
    it.owner,
    format.day(it.dueOn),
    { text: words.said.days(format.count(it.daysOverdue)), caution: true },
  ]);
  const columns = cols(
    language,
    ['number', 'auto'],
    ['what', '*'],
    ['owner', 'auto'],
    ['due', 'auto'],
    ['overdue', 'auto', true],
  );
  return section(language, 'actions', [
    line(words.said.actions(format.count(open), format.count(overdue), format.count(reopened))),
    ...(rows.length > 0 ? [table(columns, rows)] : []),
    ...rest(language, overdue, room.rows),
  ]);
}

function effects({ content, language, room }: Sheet): Content {
  const { words, format } = language;
  const { held, notShownYet, didNotHold, list } = content.effects;
  if (held + notShownYet + didNotHold === 0) return section(language, 'effects', []);
  const rows = kept(list, Math.min(4, room.rows)).map((it): Cell[] => [
    it.number,
    it.title,
    format.day(it.cleanPoint),
    format.count(it.recurrences),
    {
      text: `${words.verdict[it.verdict]}${it.changed ? ` (${words.said.changed})` : ''}`,
      caution: it.verdict === 'did_not_hold',
      strong: true,
    },
  ]);
  const columns = cols(
    language,
    ['number', 'auto'],
    ['what', '*'],
    ['since', 'auto'],
    ['recurrences', 'auto', true],
    ['verdict', 'auto'],
  );
  return section(language, 'effects', [
    line(words.said.effects(format.count(held), format.count(notShownYet), format.count(didNotHold))),
    ...(rows.length > 0 ? [table(columns, rows)] : []),
  ]);
}

function gaps({ content, language }: Sheet): Content {
  const { words, format } = language;
  const lacking = content.gaps
    .filter(({ count }) => count > 0)
    .map((it) => `${words.gap[it.kind]}: ${words.said.of(format.count(it.count), format.count(it.of))}`);
  const waiting = content.waiting
    .filter(({ count }) => count > 0)
    .map((it) => `${words.waiting[it.kind]}: ${format.count(it.count)}`);
  return section(language, 'gaps', [
    ...(lacking.length > 0 ? [line(lacking.join(' · '))] : [line(words.nothing.gaps)]),
    ...(waiting.length > 0 ? [line(`${words.said.waiting}: ${waiting.join(' · ')}`)] : []),
  ]);
}

function decisions({ content, language, room }: Sheet): Content {
  const { words, format } = language;
  const rows = kept(content.decisions, room.decisions).map((it): Cell[] => [
    it.number,
    it.title,
    words.kind[it.kind],
    it.owner,
    format.day(it.dueOn),
  ]);
  const columns = cols(
    language,
    ['number', 'auto'],
    ['what', '*'],
    ['kind', 'auto'],
    ['owner', 'auto'],
    ['due', 'auto'],
  );
  return section(language, 'decisions', [
    ...(rows.length > 0 ? [table(columns, rows)] : []),
    ...rest(language, content.decisions.length, room.decisions),
  ]);
}

const parts = [
  promises,
  signals,
  figures,
  causes,
  costliest,
  escapes,
  gates,
  prevention,
  complaints,
  actions,
  effects,
  gaps,
  decisions,
];

export const partsOf = (content: ReviewContent, language: Language, room: Room): Content[] =>
  parts.map((draw) => draw({ content, language, room }));
