import type { Block } from '#api/platform/document/blocks.ts';
import { type IntervalRow, intervalFigure } from '#api/platform/document/figures/interval-figure.ts';
import type { Effect } from '#contracts/effects.ts';
import type { DocumentSource, Words } from './document.source.ts';

/** A rate with both limits; null where it cannot be given. */
function rowOf(label: string, { rate }: Effect['before'], { format }: Words): IntervalRow | null {
  if (rate.value === null || rate.interval.high === null) return null;
  const { low, high } = rate.interval;
  const written = `${format.significant(rate.value)} (${format.significant(low)}–${format.significant(high)})`;
  return { label, written, value: rate.value, low, high };
}

const verdictWords = { held: 'held', not_shown_yet: 'notShownYet', did_not_hold: 'didNotHold' } as const;

/** The rate before and after one action, and what it shows. */
export function effectBlocks({ title, effect }: DocumentSource['effects'][number], words: Words): Block[] {
  const { terms, say, format, width } = words;
  const { document } = terms;
  const rows = [rowOf(document.before, effect.before, words), rowOf(document.after, effect.after, words)].filter(
    (row) => row !== null,
  );
  const verdict = document[verdictWords[effect.verdict]];
  return [
    { kind: 'heading', level: 2, text: `${document.effect}: ${say(title)}` },
    { kind: 'text', text: verdict, tone: 'strong' },
    ...(rows.length === 2
      ? ([
          {
            kind: 'figure',
            figure: intervalFigure(rows, {
              width: Math.min(width, 420),
              axis: document.rate,
              number: (value) => format.significant(value),
              words: `${document.effect}: ${rows.map(({ label, written }) => `${label} ${written}`).join(', ')}`,
            }),
            caption: `${document.interval}. ${format.period(effect.plan.before.from, effect.plan.before.to)} / ${format.day(effect.plan.cleanPoint)} –`,
          },
        ] satisfies Block[])
      : []),
  ];
}
