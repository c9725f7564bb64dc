import classes from './sketch.module.css';

interface Point {
  x: number;
  y: number;
}

/** Where to look: a dashed ring. */
export const Ring = ({ x, y, r = 11 }: Point & { r?: number }) => (
  <circle className={classes.ring} cx={x} cy={y} r={r} />
);

/** An arrow from one point to another, its head at the end. */
export const Arrow = ({ from, to }: { from: Point; to: Point }) => {
  const angle = Math.atan2(to.y - from.y, to.x - from.x);
  const barb = (turn: number) => `${to.x - 7 * Math.cos(angle + turn)} ${to.y - 7 * Math.sin(angle + turn)}`;
  return (
    <path
      className={classes.look}
      d={`M${from.x} ${from.y} L${to.x} ${to.y} M${barb(0.5)} L${to.x} ${to.y} L${barb(-0.5)}`}
    />
  );
};

/** A dimension between two points on one level or one plumb line: both ends have arrow heads. */
export const Dimension = ({ from, to }: { from: Point; to: Point }) => (
  <>
    <Arrow from={from} to={to} />
    <Arrow from={to} to={from} />
  </>
);
