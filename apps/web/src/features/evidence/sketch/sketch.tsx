import { useId } from 'react';
import type { FindingCode } from '#contracts/finding-catalogue.ts';
import classes from './sketch.module.css';
import { sketches } from './sketches.tsx';

/** Our drawing of a finding; its title says what it shows. Clear at 120 px width. */
export const Sketch = ({ code, title }: { code: FindingCode; title: string }) => {
  const id = useId();
  return (
    <svg className={classes.sketch} viewBox="0 0 120 90" role="img" aria-labelledby={id}>
      <title id={id}>{title}</title>
      {sketches[code]}
    </svg>
  );
};
