import type { Cause } from '#contracts/taxonomy.ts';
import type { Language } from '../group/plants.ts';
import type { Dice } from '../random.ts';
import { chinese } from './chinese.ts';
import { english } from './english.ts';
import { german } from './german.ts';
import { polish } from './polish.ts';
import { spanish } from './spanish.ts';
import type { Texts } from './texts.ts';

const texts: Record<Language, Texts> = { en: english, de: german, es: spanish, pl: polish, zh: chinese };

/** Most people write in the plant's language, some in English. */
const textsOf = (language: Language, dice: Dice) => (dice.chance(0.15) ? english : texts[language]);

interface Seen {
  cause: Cause;
  outside: boolean;
  cavity: string | undefined;
  lot: string;
}

export function noteText(language: Language, { cause, outside, cavity, lot }: Seen, dice: Dice): string {
  const { seen, outside: before } = textsOf(language, dice);
  const text = cause === 'undetermined' ? '' : dice.pick(seen[cause]);
  return (outside ? dice.pick(before) : '') + text.replace('{cavity}', cavity ?? '?').replace('{lot}', lot);
}

export function proofText(language: Language, cause: Cause, dice: Dice): string | null {
  return cause === 'undetermined' ? null : dice.pick(textsOf(language, dice).proof[cause]);
}

export const reasonText = (language: Language, dice: Dice): string => dice.pick(textsOf(language, dice).reason);
