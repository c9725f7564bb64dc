import { Arrow, Ring } from './marks.tsx';
import classes from './sketch.module.css';

const small = (turn: number, bend: number) => `rotate(${turn}) skewY(${bend})`;

/** Several terminals beside each other, bent alike or each in its own way. */
export const SeveralSketch = ({ alike }: { alike: boolean }) => (
  <>
    {[0, 1, 2].map((place) => (
      <g key={place} transform={`translate(${22 + place * 36} 48) ${small(0, alike ? -18 : [-24, 20, -4][place]!)}`}>
        <rect className={classes.metal} x="-13" y="-8" width="20" height="16" rx="2" />
        <path d="M7 -4 H13 M7 4 H13" />
        <path
          className={classes.look}
          d={alike ? 'M0 -8 L7 -13' : ['M0 -8 L7 -13', 'M0 8 L7 13', 'M-6 -8 H4'][place]}
        />
      </g>
    ))}
    <path className={classes.ghost} d="M8 80 H112" />
  </>
);

/** Leads of different presses in one box. */
export const BoxSketch = () => (
  <>
    <path className={classes.plastic} d="M18 36 H102 L94 82 H26 Z" />
    <path className={classes.wire} d="M34 66 Q60 44 84 70 M40 50 Q66 74 88 50 M36 76 Q58 58 70 46" />
    {[30, 60, 90].map((x, place) => (
      <g key={x}>
        <rect
          className={place === 1 ? classes.open : classes.metal}
          x={x - 9}
          y="6"
          width="18"
          height="14"
          rx={place * 3}
        />
        <path className={classes.ghost} d={`M${x} 20 V34`} />
      </g>
    ))}
  </>
);

/** The face of a housing with its outer cavities marked. */
export const FaceSketch = () => (
  <>
    <rect className={classes.plastic} x="14" y="12" width="92" height="66" rx="4" />
    {[0, 1, 2].flatMap((row) =>
      [0, 1, 2, 3].map((column) => {
        const outer = row !== 1 || column === 0 || column === 3;
        return (
          <rect
            key={`${row}-${column}`}
            className={outer ? classes.look : classes.open}
            x={21 + column * 20}
            y={18 + row * 19}
            width="14"
            height="14"
          />
        );
      }),
    )}
  </>
);

/** The probes of a test fixture, one of them marked. */
export const FixtureSketch = () => (
  <>
    <rect className={classes.plastic} x="14" y="58" width="92" height="20" rx="2" />
    {[26, 43, 60, 77, 94].map((x) => (
      <path
        key={x}
        className={x === 77 ? classes.look : undefined}
        d={`M${x} 58 V34 L${x - 4} 28 H${x + 4} L${x} 34`}
      />
    ))}
    <Ring x={77} y={34} r={14} />
    <path className={classes.ghost} d="M14 20 H106" />
  </>
);

/** A press with the days, or the cycles, that speak of it. */
export const ToolSketch = ({ text }: { text: string }) => (
  <>
    <path className={classes.plastic} d="M16 12 H60 V26 H30 V62 H60 V78 H16 Z" />
    <path className={classes.metal} d="M42 26 H54 V44 L48 52 L42 44 Z" />
    <path d="M40 62 H56" />
    <circle className={classes.look} cx="88" cy="45" r="21" />
    <path className={classes.look} d="M88 33 V45 L97 50" />
    <text x="88" y="82" textAnchor="middle">
      {text}
    </text>
  </>
);

/** One reel whose lot shows up in two places. */
export const LotSketch = () => (
  <>
    <circle className={classes.metal} cx="60" cy="24" r="17" />
    <circle className={classes.open} cx="60" cy="24" r="6" />
    <Arrow from={{ x: 48, y: 40 }} to={{ x: 30, y: 58 }} />
    <Arrow from={{ x: 72, y: 40 }} to={{ x: 90, y: 58 }} />
    <path
      className={classes.plastic}
      d="M10 82 V66 L22 60 V66 L34 60 V66 L46 60 V82 Z M74 82 V66 L86 60 V66 L98 60 V66 L110 60 V82 Z"
    />
  </>
);

/** The stages as a chain, the ones after the test marked. */
export const AfterTestSketch = () => (
  <>
    {[10, 32, 54, 76, 98].map((x, place) => (
      <rect key={x} className={place > 2 ? classes.look : classes.plastic} x={x} y="36" width="14" height="20" rx="2" />
    ))}
    <path d="M24 46 H32 M46 46 H54 M68 46 H76 M90 46 H98" />
    <path className={classes.solid} d="M58 46 l3 4 l6 -8" />
    <Ring x={94} y={46} r={21} />
  </>
);

/** A label of an earlier repair. */
export const ReworkSketch = () => (
  <>
    <rect className={classes.plastic} x="14" y="26" width="46" height="40" rx="3" />
    <path className={classes.wire} d="M60 46 H116" />
    <path className={classes.open} d="M76 30 H108 V62 H76 Z" />
    <path className={classes.look} d="M82 40 H102 M82 48 H102 M82 56 H94" />
    <Ring x={92} y={46} r={24} />
  </>
);
