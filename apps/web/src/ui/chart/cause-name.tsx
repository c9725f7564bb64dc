import type { Cause } from '#contracts/taxonomy.ts';
import { causeMarks } from '#web/app/theme.ts';
import { useTerms } from '#web/ui/language.ts';
import { Swatch } from './svg-patterns.tsx';

/** A cause with its colour and pattern, the same in every table and chart. */
export const CauseName = ({ cause }: { cause: Cause }) => {
  const terms = useTerms();
  return (
    <span style={{ display: 'inline-flex', alignItems: 'center', gap: '0.5em' }}>
      <Swatch mark={causeMarks[cause]} />
      {terms.cause[cause]}
    </span>
  );
};
