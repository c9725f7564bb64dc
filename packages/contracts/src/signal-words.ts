/** The sentence a person would say about a signal, in the languages of the product. */
import { formats } from './shared/format.ts';
import type { Locale } from './shared/scalars.ts';
import type { Signal, SignalFound } from './signals.ts';

interface Words extends Record<SignalFound['kind'], (names: SignalFound['names']) => string> {
  at: (plant: string) => string;
  over: string;
  counted: (observed: string, expected: string) => string;
  ratio: (ratio: string, low: string, high: string) => string;
  since: (day: string, low: string, high: string) => string;
  fell: (day: string) => string;
}

const words: Record<Locale, Words> = {
  en: {
    plant: ({ plant }) => `Plant ${plant}`,
    housing: ({ housing }) => `Housing ${housing}`,
    terminal: ({ terminal }) => `Terminal ${terminal}`,
    tool: ({ tool }) => `Tool ${tool}`,
    lot: ({ lot }) => `Reel lot ${lot}`,
    housingLot: ({ housingLot }) => `Housing lot ${housingLot}`,
    fixturePosition: ({ tool, fixturePosition }) => `Position ${fixturePosition} of fixture ${tool}`,
    cavity: ({ housing, cavity }) => `Cavity ${cavity} of housing ${housing}`,
    at: (plant) => ` at ${plant}`,
    over: ', over several plants',
    counted: (observed: string, expected: string) => `${observed} reports where ${expected} were to be expected`,
    ratio: (ratio, low, high) => `about ${ratio} times as many (${low} to ${high})`,
    since: (day, low, high) =>
      low === high ? `since the week of ${day}` : `since the week of ${day} (between ${low} and ${high})`,
    fell: (day) => `fewer again since the week of ${day}`,
  },
  de: {
    plant: ({ plant }) => `Werk ${plant}`,
    housing: ({ housing }) => `Gehäuse ${housing}`,
    terminal: ({ terminal }) => `Kontakt ${terminal}`,
    tool: ({ tool }) => `Werkzeug ${tool}`,
    lot: ({ lot }) => `Rollencharge ${lot}`,
    housingLot: ({ housingLot }) => `Gehäusecharge ${housingLot}`,
    fixturePosition: ({ tool, fixturePosition }) => `Platz ${fixturePosition} der Prüfaufnahme ${tool}`,
    cavity: ({ housing, cavity }) => `Kammer ${cavity} des Gehäuses ${housing}`,
    at: (plant) => ` in ${plant}`,
    over: ', über mehrere Werke',
    counted: (observed: string, expected: string) => `${observed} Meldungen, wo ${expected} zu erwarten waren`,
    ratio: (ratio, low, high) => `etwa ${ratio}-mal so viele (${low} bis ${high})`,
    since: (day, low, high) =>
      low === high ? `seit der Woche ab ${day}` : `seit der Woche ab ${day} (zwischen ${low} und ${high})`,
    fell: (day) => `seit der Woche ab ${day} wieder weniger`,
  },
};

/** What is combined, such as “Tool AP-1 at LEJ”. */
export function signalName({ kind, names }: Pick<SignalFound, 'kind' | 'names'>, locale: Locale): string {
  const said = words[locale];
  if (kind === 'plant') return said.plant(names);
  return said[kind](names) + (names.plant === null ? said.over : said.at(names.plant));
}

export function signalSentence(signal: SignalFound & Partial<Pick<Signal, 'since'>>, locale: Locale): string {
  const said = words[locale];
  const format = formats(locale);
  const number = (value: number, maximumFractionDigits: number) => format.number(value, { maximumFractionDigits });
  const day = (value: string) => format.day(value);
  const { observed, expected, ratio, interval, since } = signal;
  const digits = (value: number) => (value < 10 ? 1 : 0);
  const parts = [
    said.counted(number(observed, 0), number(expected, digits(expected))),
    said.ratio(
      number(ratio, digits(ratio)),
      number(interval.low, digits(ratio)),
      number(interval.high ?? ratio, digits(ratio)),
    ),
  ];
  const dated = since?.day ? since : null;
  const when =
    dated &&
    (dated.ratio !== null && dated.ratio < 1
      ? said.fell(day(dated.day))
      : said.since(day(dated.day), day(dated.low), day(dated.high)));
  return `${signalName(signal, locale)}: ${parts.join(', ')}${when ? `; ${when}` : ''}.`;
}
