import { Arrow, Ring } from './marks.tsx';
import classes from './sketch.module.css';

/** A housing from above with its secondary lock at the side. */
export const LockSketch = ({ state }: { state: 'open' | 'stuck' | 'missing' }) => (
  <>
    <rect className={classes.plastic} x="14" y="16" width="62" height="58" rx="3" />
    {[26, 40, 54].map((y) => (
      <rect key={y} className={classes.open} x="22" y={y} width="46" height="9" />
    ))}
    {state === 'missing' ? (
      <rect className={classes.ghost} x="42" y="12" width="10" height="66" />
    ) : (
      <g transform={`translate(${state === 'open' ? 44 : 24} 0)`}>
        <path className={classes.metal} d="M42 12 H52 V78 H42 Z M52 26 H64 M52 45 H64 M52 64 H64" />
      </g>
    )}
    {state === 'stuck' && (
      <>
        <Arrow from={{ x: 116, y: 45 }} to={{ x: 94, y: 45 }} />
        <path className={classes.look} d="M70 36 l8 18 M78 36 l-8 18" />
      </>
    )}
    {state === 'open' && <Arrow from={{ x: 116, y: 84 }} to={{ x: 84, y: 84 }} />}
    {state === 'missing' && <Ring x={47} y={45} r={18} />}
  </>
);
