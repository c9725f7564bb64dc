import { Arrow, Dimension, Ring } from './marks.tsx';
import classes from './sketch.module.css';

interface Props {
  latch?: 'whole' | 'white' | 'broken' | 'short' | 'none';
  /** Distance that the terminal stands back from its place. */
  back?: number;
  sheared?: boolean;
  scratches?: boolean;
  flash?: boolean;
  measured?: boolean;
  float?: boolean;
  depth?: boolean;
  blocked?: boolean;
  pushPull?: boolean;
  gauge?: boolean;
}

const latches = {
  whole: 'M30 26 H62 L66 36 L60 34 Z',
  white: 'M30 26 H62 L66 36 L60 34 Z',
  broken: 'M30 26 H42 L45 31 L48 27 M54 34 L66 40 L60 42',
  short: 'M30 26 H46 L48 31 L44 31 Z',
  none: '',
} as const;

/** A cavity cut open: mating face left, plastic latch above the terminal, wire right. */
export const CavitySketch = (it: Props) => {
  const back = it.back ?? 0;
  const latch = it.latch ?? 'whole';
  return (
    <>
      <path className={classes.plastic} d="M10 14 H92 V26 H20 V64 H92 V76 H10 Z" />
      <g transform={`translate(${back} 0)`}>
        <rect className={classes.metal} x="24" y="40" width="34" height="18" rx="2" />
        <path className={classes.metal} d="M58 44 H70 V40 H84 V60 H70 V55 H58" />
        <path className={classes.wire} d="M86 50 H118" />
      </g>
      <path className={latch === 'short' || latch === 'broken' ? classes.look : undefined} d={latches[latch]} />
      {latch === 'white' && <circle className={classes.look} cx="33" cy="26" r="6" />}
      {latch !== 'whole' && latch !== 'none' && <Ring x={latch === 'white' ? 33 : 50} y={30} r={14} />}
      {it.sheared && (
        <>
          <path className={classes.look} d="M34 64 l4 -5 l4 4 l4 -6 l4 7" />
          <Ring x={42} y={62} />
        </>
      )}
      {it.scratches && <path className={classes.look} d="M14 30 L28 24 M14 34 L32 27 M14 38 L34 31" />}
      {it.flash && (
        <>
          <path className={classes.lookFill} d="M56 64 q3 -9 8 0 q3 -6 6 0 Z" />
          <Ring x={63} y={61} />
        </>
      )}
      {it.measured && <Dimension from={{ x: 100, y: 26 }} to={{ x: 100, y: 64 }} />}
      {it.float && <Dimension from={{ x: 41, y: 28 }} to={{ x: 41, y: 72 }} />}
      {it.depth && (
        <>
          <path className={classes.ghost} d={`M${24 + back} 40 V86 M10 64 V86`} />
          <Dimension from={{ x: 10, y: 83 }} to={{ x: 24 + back, y: 83 }} />
        </>
      )}
      {it.blocked && <path className={classes.lookFill} d="M84 36 H94 V64 H84 Z" />}
      {it.pushPull && (
        <>
          <Arrow from={{ x: 116, y: 34 }} to={{ x: 90, y: 34 }} />
          <path className={classes.look} d="M68 28 l5 -5 M70 33 h7 M64 24 v-7" />
        </>
      )}
      {it.gauge && (
        <>
          <Arrow from={{ x: 92, y: 50 }} to={{ x: 117, y: 50 }} />
          <text x="98" y="40">
            N
          </text>
        </>
      )}
    </>
  );
};
