import type { Mark } from '#web/app/theme.ts';
import { strokeColour, strokes, strokeWidth, tileSize } from './pattern.ts';

const idOf = ({ colour, pattern }: Mark): string => `fill-${pattern}-${colour.slice(1)}`;

/** What an SVG shape fills itself with, once `SvgPatterns` of the same marks is in the drawing. */
export const svgFill = (mark: Mark): string => (mark.pattern === 'solid' ? mark.colour : `url(#${idOf(mark)})`);

export const SvgPatterns = ({ marks }: { marks: readonly Mark[] }) => (
  <defs>
    {marks.map((mark) => {
      const path = strokes[mark.pattern];
      return (
        path && (
          <pattern key={idOf(mark)} id={idOf(mark)} width={tileSize} height={tileSize} patternUnits="userSpaceOnUse">
            <rect width={tileSize} height={tileSize} fill={mark.colour} />
            <path
              d={path}
              fill="none"
              stroke={strokeColour(mark.colour)}
              strokeWidth={strokeWidth(mark.pattern)}
              strokeLinecap="round"
            />
          </pattern>
        )
      );
    })}
  </defs>
);

/** A small sample of a mark, beside its name. */
export const Swatch = ({ mark }: { mark: Mark }) => (
  <svg width="16" height="16" viewBox="0 0 16 16" aria-hidden="true" focusable="false" style={{ flex: 'none' }}>
    <SvgPatterns marks={[mark]} />
    <rect width="16" height="16" rx="2" fill={svgFill(mark)} />
  </svg>
);
