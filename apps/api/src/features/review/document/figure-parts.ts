/** The parts that count: figures, causes, escapes, gates, prevention, what the data lacks. */
import type { Content } from 'pdfmake/interfaces.js';
import { cols, kept, money, type Sheet, section } from './drawing.ts';
import { type Cell, line, table } from './layout.ts';

export function figures({ content, language }: Sheet): Content {
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

export function causes({ content, language, room }: Sheet): Content {
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

export function costliest({ content, language, room }: Sheet): Content {
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

export function escapes({ content, language }: Sheet): Content {
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

export function gates({ content, language }: Sheet): Content {
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

export function prevention({ content, language }: Sheet): Content {
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

export function gaps({ content, language }: Sheet): Content {
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
