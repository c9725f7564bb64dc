import { Arrow, Dimension, Ring } from './marks.tsx';
import classes from './sketch.module.css';

interface Props {
  kind: 'angle' | 'tie' | 'side' | 'short' | 'freed' | 'swapped' | 'load';
}

const runs = {
  angle: ['M44 46 H54 Q62 46 62 56 V86'],
  tie: ['M44 34 H114', 'M44 46 H114', 'M44 58 H114'],
  side: ['M44 50 Q70 50 82 76 L90 88'],
  short: ['M44 32 Q80 50 114 44', 'M44 46 H114', 'M44 60 Q80 72 114 48'],
  freed: ['M44 46 Q80 46 116 40'],
  swapped: ['M44 34 C70 34 80 58 114 58', 'M44 58 C70 58 80 34 114 34'],
  load: ['M44 46 H114'],
} as const;

/** A housing from the side and the wires that leave it. */
export const WireSketch = ({ kind }: Props) => (
  <>
    {runs[kind].map((run) => (
      <path key={run} className={classes.wire} d={run} />
    ))}
    {kind === 'short' && <path className={classes.look} d="M44 46 H114" />}
    <rect className={classes.plastic} x="8" y="22" width="36" height="48" rx="3" />
    <path className={classes.ghost} d="M44 46 H100" />
    {kind === 'angle' && (
      <>
        <path className={classes.look} d="M84 46 A26 26 0 0 1 62 70" />
        <Ring x={58} y={50} />
      </>
    )}
    {kind === 'tie' && (
      <>
        <rect className={classes.lookFill} x="64" y="28" width="7" height="36" rx="2" />
        <Dimension from={{ x: 44, y: 80 }} to={{ x: 67, y: 80 }} />
      </>
    )}
    {kind === 'side' && <Arrow from={{ x: 58, y: 46 }} to={{ x: 58, y: 74 }} />}
    {kind === 'freed' && (
      <>
        <path className={classes.look} d="M68 20 v14 M80 20 v14 M66 60 l16 14 M82 60 l-16 14" />
        <Ring x={74} y={46} r={16} />
      </>
    )}
    {kind === 'swapped' && <Ring x={79} y={46} r={15} />}
    {kind === 'load' && (
      <>
        <Arrow from={{ x: 62, y: 62 }} to={{ x: 114, y: 62 }} />
        <text x="80" y="78">
          N
        </text>
      </>
    )}
  </>
);
