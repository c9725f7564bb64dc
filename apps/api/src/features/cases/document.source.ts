import type { Picture } from '#api/platform/document/blocks.ts';
import type { DocumentChoice } from '#contracts/case-parts.ts';
import type { CaseTerms } from '#contracts/case-terms.en.ts';
import type { Attachment, Case } from '#contracts/cases.ts';
import type { Effect } from '#contracts/effects.ts';
import type { FindingCode } from '#contracts/finding-catalogue.ts';
import type { Format } from '#contracts/shared/format.ts';
import type { Locale, Paper } from '#contracts/shared/scalars.ts';
import type { Terms } from '#contracts/terms.en.ts';
import type { DocumentHead, Promised } from './document.queries.ts';

/** All that the document is made from. */
export interface DocumentSource {
  case: Case;
  choice: DocumentChoice;
  locale: Locale;
  paper: Paper;
  head: DocumentHead;
  /** the plant's day */
  today: string;
  madeAt: Date;
  actions: readonly Promised[];
  effects: readonly { title: string; effect: Effect }[];
  pictures: readonly Picture[];
  files: readonly Attachment[];
}

/** The words of the document's language, and the filter that every free text passes. */
export interface Words {
  terms: CaseTerms;
  trade: Terms;
  finding: (code: FindingCode) => string;
  format: Format;
  /** takes out names of other customers and amounts of money */
  say: (text: string) => string;
  /** width of the text, points */
  width: number;
}
