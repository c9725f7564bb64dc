import { actionTerms as de } from '#contracts/action-terms.de.ts';
import { type ActionTerms, actionTerms as en } from '#contracts/action-terms.en.ts';
import { useLocale } from '#web/ui/language.ts';

/** Labels of an action's kinds, states, verdicts and columns in the person's language. */
export const useActionTerms = (): ActionTerms => (useLocale() === 'de' ? de : en);
