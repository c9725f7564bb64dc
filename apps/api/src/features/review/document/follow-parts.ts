/** The parts about people's work: promises, signals, complaints, actions, effects, decisions. */
import type { Content } from 'pdfmake/interfaces.js';
import { signalSentence } from '#contracts/signal-words.ts';
import { cols, kept, rest, type Sheet, section } from './drawing.ts';
import { type Cell, line, quiet, table } from './layout.ts';

export function promises({ content, language, room }: Sheet): Content {
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

export function signals({ content, language, room }: Sheet): Content {
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

export function complaints({ content, language, room }: Sheet): Content {
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

export function actions({ content, language, room }: Sheet): Content {
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

export function effects({ content, language, room }: Sheet): Content {
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

export function decisions({ content, language, room }: Sheet): Content {
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
