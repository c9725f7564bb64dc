import { caseTerms as german } from '#contracts/case-terms.de.ts';
import { type CaseTerms, caseTerms as english } from '#contracts/case-terms.en.ts';
import { useLocale } from '#web/ui/language.ts';

export const useCaseTerms = (): CaseTerms => (useLocale() === 'de' ? german : english);
