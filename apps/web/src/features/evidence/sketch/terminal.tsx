import { Arrow, Dimension, Ring } from './marks.tsx';
import classes from './sketch.module.css';

interface Props {
  lance?: 'up' | 'flat' | 'low';
  bent?: boolean;
  stretched?: boolean;
  tab?: boolean;
  crimpSize?: boolean;
  thickWire?: boolean;
  witness?: boolean;
  probe?: boolean;
  opened?: boolean;
  residue?: boolean;
  /** The lance is what to look at. */
  ringLance?: boolean;
}

const lances = { up: 'M44 38 L60 26', flat: 'M44 38 L61 37', low: 'M44 38 L60 32' } as const;

/** A terminal from the side: mating end left, lance on top, crimp and wire right. */
export const TerminalSketch = (it: Props) => {
  const rear = it.stretched ? 10 : 0;
  return (
    <>
      <path
        className={classes.wire}
        d={`M${92 + rear / 2} 50 H118`}
        style={it.thickWire ? { strokeWidth: 16 } : undefined}
      />
      {it.thickWire && <Dimension from={{ x: 110, y: 30 }} to={{ x: 110, y: 70 }} />}
      <g transform={it.bent ? 'rotate(-13 62 46)' : undefined}>
        {it.opened ? (
          <path className={classes.metal} d="M10 28 L22 38 H50 V60 H22 L10 70" />
        ) : (
          <rect className={classes.metal} x="12" y="38" width="38" height="22" rx="2" />
        )}
        <path className={it.ringLance ? classes.look : undefined} d={lances[it.lance ?? 'up']} />
        {it.tab && <path className={classes.lookFill} d="M4 56 H12 V60 H4 Z" />}
        {it.probe && <circle className={classes.lookFill} cx="20" cy="49" r="4" />}
        {it.witness && <path className={classes.look} d="M50 29 L58 23 M54 33 L63 27" />}
      </g>
      <path
        className={it.stretched ? classes.look : undefined}
        d={it.stretched ? 'M50 42 Q62 49 72 42 M50 58 Q62 51 72 58' : 'M50 44 H62 M50 58 H62'}
      />
      <g transform={`translate(${rear} 0)`}>
        <path className={classes.metal} d="M62 43 Q71 38 80 43 V58 Q71 62 62 58 Z" />
        <path className={classes.metal} d="M84 41 Q90 37 96 41 V60 Q90 63 84 60 Z" />
        {it.crimpSize && <Dimension from={{ x: 71, y: 24 }} to={{ x: 71, y: 78 }} />}
      </g>
      {it.residue && (
        <path
          className={classes.lookFill}
          d="M30 34 q5 -8 10 0 q6 -6 9 2 q-10 6 -19 -2 Z M54 62 q4 -7 8 0 q5 5 -1 8 q-9 0 -7 -8 Z"
        />
      )}
      {it.ringLance && <Ring x={54} y={32} r={15} />}
      {it.lance === 'low' && <Dimension from={{ x: 66, y: 14 }} to={{ x: 66, y: 38 }} />}
      {it.probe && <Ring x={20} y={49} />}
      {it.opened && <Arrow from={{ x: 2, y: 49 }} to={{ x: 24, y: 49 }} />}
      {it.witness && <Ring x={56} y={28} r={14} />}
      {it.bent && <path className={classes.ghost} d="M12 38 H50 M12 60 H50" />}
    </>
  );
};
